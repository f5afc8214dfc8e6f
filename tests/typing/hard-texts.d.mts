export const manyWays: (name: string) => string;
export const stock: string;
export const bank: string;
export const fromBankToRelay: string;
export const odd: string;
