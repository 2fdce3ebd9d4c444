export interface Choice<Value> {
  label: string;
  value: Value;
  /** The one that Enter takes. */
  main?: boolean;
}

export interface Question<Value> {
  title: string;
  text: string;
  choices: Choice<Value>[];
}

/** Asks in the page. Escape, or "Cancel", answers undefined. */
export function ask<Value>({ title, text, choices }: Question<Value>): Promise<Value | undefined> {
  const dialog = document.createElement("dialog");
  dialog.className = "bench-dialog";
  const heading = document.createElement("h2");
  heading.id = "bench-question";
  heading.textContent = title;
  dialog.setAttribute("aria-labelledby", heading.id);
  const words = document.createElement("p");
  words.textContent = text;
  const buttons = document.createElement("div");
  dialog.append(heading, words, buttons);
  document.body.append(dialog);
  return new Promise((resolve) => {
    let answer: Value | undefined;
    for (const choice of [{ label: "Cancel", value: undefined, main: false }, ...choices]) {
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = choice.label;
      button.autofocus = choice.main === true;
      button.classList.toggle("main", choice.main === true);
      button.addEventListener("click", () => {
        answer = choice.value;
        dialog.close();
      });
      buttons.append(button);
    }
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(answer);
    });
    // The grid listens for keys on the whole page; what is typed here is not for it.
    dialog.addEventListener("keydown", (event) => event.stopPropagation());
    dialog.showModal();
  });
}
