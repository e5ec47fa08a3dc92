/** Whether the device can speak (Web Speech). */
export const speaks = (): boolean => 'speechSynthesis' in window;

export const speak = (text: string): void => {
  speechSynthesis.cancel();
  const words = new SpeechSynthesisUtterance(text);
  words.lang = document.documentElement.lang;
  words.rate = 0.9;
  speechSynthesis.speak(words);
};
