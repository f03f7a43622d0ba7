/** Whether this browser gives the drawing context that the solid needs. The one tried is given back at once. */
export function hasWebgl(): boolean {
  try {
    const context = document.createElement('canvas').getContext('webgl2');
    context?.getExtension('WEBGL_lose_context')?.loseContext();
    return context !== null;
  } catch {
    return false;
  }
}
