package gapwise.server.cli;

import gapwise.store.Soundness;

/** Words for a database in which nothing was found wrong. */
final class CheckedRecords {
  private CheckedRecords() {}

  static String told(Soundness sound) {
    return sound.versions()
        + " versions"
        + sound.lastChangeAt().map(when -> ", the last written at " + when).orElse("")
        + "."
        + (sound.withoutChecksum() == 0
            ? " Each was held against its checksum."
            : " "
                + sound.withoutChecksum()
                + " of them have no checksum, as an older version of the program or another program"
                + " wrote them, so that damage to their words could not be seen.");
  }
}
