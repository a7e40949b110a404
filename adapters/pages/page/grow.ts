/// <reference lib="dom" />

/** Lets a box grow with what is typed, as far as its style allows. Call the returned function after changing it by script. */
export function growWithText(box: HTMLTextAreaElement): () => void {
  const grow = () => {
    box.style.height = 'auto';
    // What is scrolled leaves out the two edges.
    box.style.height = `${box.scrollHeight + box.offsetHeight - box.clientHeight}px`;
  };
  box.addEventListener('input', grow);
  grow();
  return grow;
}
