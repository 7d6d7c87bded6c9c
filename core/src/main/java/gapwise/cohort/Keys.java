package gapwise.cohort;

import gapwise.reference.likeness.PageSpan;
import gapwise.reference.likeness.TitleWords;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Short signs of a study, as numbers, of which two studies must share one before anything else of
 * them is compared, so that work grows with the number of studies and not with that of pairs. Two
 * signs of one number only cost a comparison.
 *
 * @param own what others find it by
 * @param sought what it finds others by
 * @param rows signs of patients described one by one; a few must be shared
 */
record Keys(Set<Long> own, Set<Long> sought, Set<Long> rows) {
  /** So many first and so many last authors stand for a list. */
  private static final int FIRST_AUTHORS = 7;

  private static final int LAST_AUTHORS = 2;

  /** So many amounts make a set of numbers that seldom occurs twice. */
  private static final int AMOUNTS = 3;

  static Keys of(StudyFacts study) {
    Set<String> own = new TreeSet<>();
    Set<String> sought = new TreeSet<>();
    StudyFacts.Print print = study.print();
    print.doi().ifPresent(doi -> own.add("doi|" + doi));
    print.pmid().ifPresent(pmid -> own.add("pmid|" + pmid));
    print.register().filter(n -> !n.isEmpty()).ifPresent(n -> own.add("register|" + n));
    if (!print.volume().isEmpty() && print.pages().isPresent()) {
      own.add("place|" + print.volume() + "|" + print.pages().map(PageSpan::first).orElse(""));
    }
    authors(study, own);
    for (GroupFacts group : study.groups()) {
      for (CentreName centre : study.centres()) {
        own.add("centre|" + new TreeSet<>(centre.words()) + group.method());
        own.add("centre|" + new TreeSet<>(centre.name()) + group.method());
      }
      numbers(group, own);
    }
    sought.addAll(own);
    titles(study, own, sought);
    firstAuthor(study, own, sought);
    register(study, own, sought);
    return new Keys(hashed(own), hashed(sought), rows(study));
  }

  private static void authors(StudyFacts study, Set<String> own) {
    List<Author> all = study.team().people();
    List<Author> some =
        all.size() <= FIRST_AUTHORS + LAST_AUTHORS
            ? all
            : Stream.concat(
                    all.subList(0, FIRST_AUTHORS).stream(),
                    all.subList(all.size() - LAST_AUTHORS, all.size()).stream())
                .toList();
    for (Author first : some) {
      for (Author second : some) {
        if (first.skeleton().compareTo(second.skeleton()) < 0) {
          own.add("authors|" + first.skeleton() + "|" + second.skeleton());
        }
      }
    }
  }

  /** Titles are of use where authors are not known: many papers have one title of the trade. */
  private static void titles(StudyFacts study, Set<String> own, Set<String> sought) {
    for (TitleWords title : study.print().titles()) {
      own.add("title|" + title.letters());
      if (!study.team().isKnown()) {
        sought.add("title|" + title.letters());
      }
    }
  }

  /** A paper is looked for under the years about its own. */
  private static void firstAuthor(StudyFacts study, Set<String> own, Set<String> sought) {
    if (study.team().first().isPresent() && study.print().year().isPresent()) {
      String name = "first|" + study.team().first().get().skeleton() + "|";
      int year = study.print().year().getAsInt();
      own.add(name + year);
      for (int near = year - 1; near <= year + 1; near++) {
        sought.add(name + near);
      }
    }
  }

  /** A register of a country looks for the hospitals there, and they for it. */
  private static void register(StudyFacts study, Set<String> own, Set<String> sought) {
    if (study.country().isEmpty() || study.centres().isEmpty() && !study.isRegister()) {
      return;
    }
    for (GroupFacts group : study.groups()) {
      String there = study.country() + "|" + group.method();
      own.add((study.isRegister() ? "in register|" : "in hospital|") + there);
      sought.add((study.isRegister() ? "in hospital|" : "in register|") + there);
    }
  }

  private static void numbers(GroupFacts group, Set<String> own) {
    Map<String, Long> amounts = group.numbers().amounts();
    StringBuilder means = new StringBuilder();
    int given = 0;
    for (String name : List.of("age mean", "length mean", "follow-up mean")) {
      Long amount = amounts.get(name);
      given += amount == null ? 0 : 1;
      means.append('|').append(amount == null ? "" : amount);
    }
    if (given >= AMOUNTS && group.patients().isPresent()) {
      own.add("numbers|" + group.method() + group.patients().getAsInt() + means);
    }
  }

  private static Set<Long> rows(StudyFacts study) {
    Set<Long> rows = new HashSet<>();
    for (GroupFacts group : study.groups()) {
      group.prints().forEach(print -> rows.add(hash("row|" + print.key())));
    }
    return rows;
  }

  private static Set<Long> hashed(Set<String> signs) {
    Set<Long> hashes = new HashSet<>();
    signs.forEach(sign -> hashes.add(hash(sign)));
    return hashes;
  }

  /** The hash of Fowler, Noll and Vo with 64 bits, variant 1a (RFC 9923 gives its constants). */
  private static long hash(String text) {
    long hash = 0xcbf29ce484222325L;
    for (int at = 0; at < text.length(); at++) {
      hash = (hash ^ text.charAt(at)) * 0x100000001b3L;
    }
    return hash;
  }

  /** Whether two studies are compared at all. */
  boolean meet(Keys other) {
    return sought.stream().anyMatch(other.own::contains)
        || rows.stream().filter(other.rows::contains).limit(SharedRows.LEAST).count()
            >= SharedRows.LEAST;
  }
}
