package gapwise.curation;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Studies of one state read lately, so that the pages of one result do not parse the same records
 * again. Safe for use by many threads.
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

  synchronized Optional<KeptStudy> find(String studyId) {
    return Optional.ofNullable(studies.get(studyId));
  }

  synchronized void keep(Map<String, KeptStudy> read) {
    read.values().stream().limit(MOST).forEach(one -> studies.put(one.study().id(), one));
  }

  /** A copy for the next state, without those that differ there. */
  synchronized RecentStudies without(Set<String> changed) {
    RecentStudies next = new RecentStudies();
    next.studies.putAll(studies);
    next.studies.keySet().removeAll(changed);
    return next;
  }
}
