package gapwise.cohort;

import gapwise.evidence.Citation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The authors of a paper in their order.
 *
 * @param people the authors; the first alone where the paper's record gives no more
 */
record Team(List<Author> people) {
  /** So many of a list are compared; a list of hundreds of names is of a whole society. */
  private static final int MOST = 60;

  Team {
    people = List.copyOf(people);
  }

  static Team of(Citation citation) {
    List<Author> people =
        new ArrayList<>(citation.authors().map(all -> Author.listed(all.text())).orElse(List.of()));
    Optional<Author> first = citation.firstAuthor().map(Author::ofFamilyName);
    if (first.isPresent() && people.stream().noneMatch(one -> one.maybe(first.get()))) {
      people.add(0, first.get());
    }
    return new Team(people.subList(0, Math.min(MOST, people.size())));
  }

  boolean isKnown() {
    return !people.isEmpty();
  }

  Optional<Author> first() {
    return people.stream().findFirst();
  }

  /** How many of the authors may stand in the other list too, each counted once. */
  int shared(Team other) {
    List<Author> left = new ArrayList<>(other.people);
    int shared = 0;
    for (Author author : people) {
      Optional<Author> twin = left.stream().filter(author::maybe).findFirst();
      if (twin.isPresent()) {
        left.remove(twin.get());
        shared++;
      }
    }
    return shared;
  }

  int smaller(Team other) {
    return Math.min(people.size(), other.people.size());
  }

  boolean sameFirst(Team other) {
    return first().isPresent()
        && other.first().isPresent()
        && first().get().maybe(other.first().get());
  }
}
