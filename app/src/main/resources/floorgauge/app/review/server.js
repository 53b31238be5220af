// Talks to the server this page came from, and says aloud what became of it.

let token = 0;

/** A name for one deed, so that sending it twice counts once. */
export function deedName() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (b) => b.toString(16).padStart(2, '0')).join('');
}

/** Says a sentence to everyone, those who listen included. */
export function say(sentence) {
  const place = document.getElementById('said');
  const mine = ++token;
  place.textContent = sentence;
  setTimeout(() => {
    if (mine === token) {
      place.textContent = '';
    }
  }, 8000);
}

/** Sends a deed; answers with what the server said, or throws an Error whose message is a sentence. */
export async function send(address, body) {
  for (let attempt = 1; ; attempt++) {
    let response;
    try {
      response = await fetch(address, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify(body),
      });
    } catch (lost) {
      if (attempt < 3) {
        continue;
      }
      throw new Error('The program does not answer; it was not kept. Start it again and press once more.');
    }
    const answer = await response.json();
    if (!response.ok) {
      throw new Error(answer.error || 'It was not kept.');
    }
    return answer;
  }
}

/** Reads data of the page. */
export async function read(address) {
  const response = await fetch(address);
  const answer = await response.json();
  if (!response.ok) {
    throw new Error(answer.error || 'It could not be read.');
  }
  return answer;
}
