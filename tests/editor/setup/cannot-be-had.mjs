/** Something from outside that the editor tests need and that this machine cannot give. Its message is one plain sentence. */
export class CannotBeHad extends Error {}
