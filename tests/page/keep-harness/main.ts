import { openKeeper } from '../../../src/page/keep/open-keeper.ts';

declare global {
  interface Window {
    openKeeper: typeof openKeeper;
  }
}

window.openKeeper = openKeeper;
