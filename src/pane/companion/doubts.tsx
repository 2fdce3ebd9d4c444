import { intoSight } from "../parts/into-sight";

/** What speaks against a figure, before it is written all the same. */
export const Doubts = ({ doubts }: { readonly doubts: readonly string[] }) => (
  <div class="doubts" role="alert" ref={intoSight}>
    <p>Can that be right?</p>
    <ul>
      {doubts.map((doubt) => (
        <li key={doubt}>{doubt}</li>
      ))}
    </ul>
  </div>
);
