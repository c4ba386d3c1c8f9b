/** A file name that every system takes, from a railway's name. */
export const fileNameOf = (name: string, extension: `.${string}`): string =>
  `${
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'railway'
  }${extension}`;
