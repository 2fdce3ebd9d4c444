import { mentionsIn } from "../../functions/mentions";

export interface LinkedTextProps {
  readonly words: string;
  /** The function that the words stand under: it is not linked to itself. */
  readonly own: string;
  readonly onOpen: (id: string) => void;
}

/** Words in which each function that they name opens its page. */
export function LinkedText({ words, own, onOpen }: LinkedTextProps) {
  return (
    <>
      {mentionsIn(words, own).map((piece, index) =>
        "id" in piece ? (
          <button key={index} type="button" class="link" onClick={() => onOpen(piece.id)}>
            GYLE.{piece.id}
          </button>
        ) : (
          piece.words
        ),
      )}
    </>
  );
}
