package gapwise.load;

import java.util.ArrayList;
import java.util.List;

/** What people met. Each keeps one of their own; they are added up at the end. */
final class Tally {
  private static final double MOST_SECONDS = 2;

  private final List<Long> took = new ArrayList<>();
  private final List<String> faults = new ArrayList<>();
  private int conflicts;
  private int busy;
  private int stale;
  private long oldest;

  void read(long nanos, long age) {
    took.add(nanos);
    oldest = Math.max(oldest, age);
    if (age > MOST_SECONDS * 1e9) {
      stale++;
    }
  }

  void conflict() {
    conflicts++;
  }

  void busyAnswer() {
    busy++;
  }

  void fault(String words) {
    faults.add(words);
  }

  void add(Tally other) {
    took.addAll(other.took);
    faults.addAll(other.faults);
    conflicts += other.conflicts;
    busy += other.busy;
    stale += other.stale;
    oldest = Math.max(oldest, other.oldest);
  }

  int reads() {
    return took.size();
  }

  int conflicts() {
    return conflicts;
  }

  int busy() {
    return busy;
  }

  int stale() {
    return stale;
  }

  double oldestSeconds() {
    return oldest / 1e9;
  }

  List<String> faults() {
    return List.copyOf(faults);
  }

  /** The nearest-rank percentile of the time that a read took. */
  double milliseconds(double share) {
    List<Long> sorted = took.stream().sorted().toList();
    return sorted.isEmpty() ? 0 : sorted.get((int) Math.ceil(share * sorted.size()) - 1) / 1e6;
  }
}
