// Replaces the module `vscode` outside an extension host, where only the names in the list of in-host stories are read.
export {};
