package gapwise.load;

import gapwise.curation.StudiesAt;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** What writers were told is stored, and when. Safe for threads. */
final class Acknowledged {
  /** Studies that all writers change, so that they often meet. */
  static final int STUDIES = 6;

  private final List<Write> writes = new CopyOnWriteArrayList<>();

  /** A version of a study, told as stored at a moment of the clock of this process. */
  private record Write(String study, int version, String title, long nanos) {}

  static String study(int number) {
    return "shared" + number;
  }

  void add(String study, int version, String title) {
    writes.add(new Write(study, version, title, System.nanoTime()));
  }

  int count() {
    return writes.size();
  }

  /**
   * How old what was read is: since when a later version had been acknowledged.
   *
   * @param version the version that was read; 0 for none
   * @param asked when the question was sent
   * @return nanoseconds, 0 where nothing later was acknowledged by then
   */
  long age(String study, int version, long asked) {
    long age = 0;
    for (Write write : writes) {
      if (write.study().equals(study) && write.version() > version) {
        age = Math.max(age, asked - write.nanos());
      }
    }
    return age;
  }

  /** Writes that are not in the history as they were acknowledged, in words. */
  List<String> lost(StudiesAt studies) {
    List<String> lost = new ArrayList<>();
    for (Write write : writes) {
      boolean there =
          studies
              .version(write.study(), write.version())
              .flatMap(version -> version.study())
              .filter(study -> study.citation().title().equals(write.title()))
              .isPresent();
      if (!there) {
        lost.add("lost: " + write.study() + " version " + write.version() + ": " + write.title());
      }
    }
    return lost;
  }
}
