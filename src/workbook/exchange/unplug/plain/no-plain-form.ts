/** Why a function, or a call of it, has no plain form and so becomes the value that it had. */
export class NoPlainForm extends Error {
  override readonly name = "NoPlainForm";
}
