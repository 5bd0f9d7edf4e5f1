/** js-quantities brings no types; only what the outside check of the factors uses. */
declare module 'js-quantities' {
  export default class Qty {
    constructor(amount: number, unit: string);
    toBase(): { readonly scalar: number };
  }
}
