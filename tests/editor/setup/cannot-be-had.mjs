/** An external component that the editor tests need and this machine cannot provide. Its message is one plain sentence. */
export class CannotBeHad extends Error {}
