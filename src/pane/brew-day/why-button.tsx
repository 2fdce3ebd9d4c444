import { useId, useState } from "preact/hooks";

/** Why a step is done and what goes wrong otherwise, for those who ask. A teacher's blank stays blank. */
export function WhyButton({ why }: { readonly why: string }) {
  const [open, setOpen] = useState(false);
  const id = useId();
  if (why === "") return null;
  return (
    <div class="why">
      <button type="button" class="quiet" aria-expanded={open} aria-controls={id} onClick={() => setOpen(!open)}>
        {open ? "Hide why" : "Why?"}
      </button>
      <p id={id} hidden={!open}>
        {why}
      </p>
    </div>
  );
}
