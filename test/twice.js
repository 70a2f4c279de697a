// What failed the first time is printed, so that a test that needs a second try is seen.
jest.retryTimes(1, { logErrorsBeforeRetry: true });
