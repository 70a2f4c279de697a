// No verdict rests on how busy a machine is: this is long enough for a slow one, and ends what hangs.
jest.setTimeout(180_000);
