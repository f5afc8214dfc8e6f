import fc from "fast-check";

// What is checked for "any" plan or network is checked for the same ones each time, so that the gate says the same of the same
// text. New ones are looked for on purpose: LOOMWRIGHT_SEED is any whole number.
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(process.env.LOOMWRIGHT_SEED ?? 1) });
