// Stands in for the module `vscode` outside an extension host, where the list of in-host stories is read for its names alone.
export {};
