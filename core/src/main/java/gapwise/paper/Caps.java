package gapwise.paper;

/**
 * The most that reading one file may take. A paper of this trade has some ten pages and a few
 * megabytes; the standard is far above that and low enough for a server of one gigabyte.
 *
 * @param bytes of the file
 * @param pages of the file
 * @param unpackedBytes of one packed part of it, such as the drawing of a page
 * @param steps of drawing on one page, those of nested drawings among them
 * @param letters on one page
 * @param pathPoints corners of drawn lines on one page
 * @param pixels of one picture, made or embedded
 * @param temporaryBytes on disk
 * @param milliseconds for one answer
 */
public record Caps(
    long bytes,
    int pages,
    long unpackedBytes,
    int steps,
    int letters,
    int pathPoints,
    long pixels,
    long temporaryBytes,
    long milliseconds) {
  /** Ours; see the class. */
  public static final Caps STANDARD =
      new Caps(
          80_000_000,
          3_000,
          100_000_000,
          2_000_000,
          100_000,
          400_000,
          40_000_000,
          500_000_000,
          20_000);

  public Caps {
    long least = Math.min(Math.min(bytes, unpackedBytes), Math.min(pixels, temporaryBytes));
    least = Math.min(least, Math.min(milliseconds, Math.min(pages, steps)));
    if (Math.min(least, Math.min(letters, pathPoints)) < 1) {
      throw new IllegalArgumentException("every cap must be 1 or more");
    }
  }

  /** The same with another time for one answer. */
  public Caps withMilliseconds(long most) {
    return new Caps(
        bytes, pages, unpackedBytes, steps, letters, pathPoints, pixels, temporaryBytes, most);
  }

  /** The same for files of other sizes. */
  public Caps withSize(long mostBytes, int mostPages) {
    return new Caps(
        mostBytes,
        mostPages,
        unpackedBytes,
        steps,
        letters,
        pathPoints,
        pixels,
        temporaryBytes,
        milliseconds);
  }
}
