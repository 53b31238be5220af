// Pages without anything of their own to do: keys, and the notice's button.

import { send, say } from './server.js';
import { listen } from './keys.js';

listen();
document.getElementById('agree')?.addEventListener('click', async () => {
  try {
    await send('/do/agree', {});
    location.assign('/');
  } catch (failure) {
    say(failure.message);
  }
});
