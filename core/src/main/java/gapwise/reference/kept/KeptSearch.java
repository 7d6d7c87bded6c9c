package gapwise.reference.kept;

import com.fasterxml.jackson.annotation.JsonIgnore;
import gapwise.reference.format.SearchDone;
import java.util.Objects;
import java.util.Optional;

/**
 * A line of the log of searches.
 *
 * @param search what was searched for, where, when, and how many records there were
 * @param load key of the load with its records; empty where none was named
 */
public record KeptSearch(SearchDone search, Optional<String> load) {
  public KeptSearch {
    Objects.requireNonNull(search, "search");
    Objects.requireNonNull(load, "load");
  }

  /** The key under which it is kept: another count, or who searched, mends the same line. */
  @JsonIgnore
  public String key() {
    return "search-"
        + Fingerprint.id(
                search.database()
                    + "\n"
                    + search.date()
                    + "\n"
                    + search.words()
                    + "\n"
                    + search.limits().orElse("")
                    + "\n"
                    + load.or(search::file).orElse(""))
            .substring(KeptReference.PREFIX.length());
  }
}
