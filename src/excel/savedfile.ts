/** The whole workbook as a file, as Excel would save it now. */
export const savedFile = (): Promise<Uint8Array> =>
  new Promise((resolve, reject) => {
    Office.context.document.getFileAsync(Office.FileType.Compressed, { sliceSize: 1 << 22 }, async ({ status, value: file, error }) => {
      if (status !== Office.AsyncResultStatus.Succeeded) return reject(error);
      const slice = (index: number) =>
        new Promise<number[]>((done, failed) =>
          file.getSliceAsync(index, (got) =>
            got.status === Office.AsyncResultStatus.Succeeded ? done(got.value.data) : failed(got.error),
          ),
        );
      try {
        const bytes: number[] = [];
        for (let i = 0; i < file.sliceCount; i++) for (const byte of await slice(i)) bytes.push(byte);
        resolve(Uint8Array.from(bytes));
      } catch (trouble) {
        reject(trouble);
      } finally {
        file.closeAsync();
      }
    });
  });
