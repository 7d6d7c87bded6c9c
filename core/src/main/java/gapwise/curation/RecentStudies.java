package gapwise.curation;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Studies read lately, so that the pages of one result do not parse the same records again. What
 * was read before a write of any study is not kept after it: it may be the version before.
 */
final class RecentStudies {
  /** More than most evidence bases hold; a parsed study takes some ten kilobytes. */
  private static final int MOST = 5000;

  private final Map<String, KeptStudy> studies =
      new LinkedHashMap<>(256, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, KeptStudy> eldest) {
          return size() > MOST;
        }
      };
  private long writes;

  synchronized Optional<KeptStudy> find(String studyId) {
    return Optional.ofNullable(studies.get(studyId));
  }

  /** To be asked before reading what is to be kept. */
  synchronized long writesSoFar() {
    return writes;
  }

  synchronized void keep(Map<String, KeptStudy> read, long writesBefore) {
    if (writes == writesBefore) {
      read.values().stream().limit(MOST).forEach(one -> studies.put(one.study().id(), one));
    }
  }

  synchronized void forget(Iterable<String> studyIds) {
    writes++;
    studyIds.forEach(studies::remove);
  }
}
