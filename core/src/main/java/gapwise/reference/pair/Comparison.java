package gapwise.reference.pair;

import gapwise.reference.likeness.JournalLikeness;
import gapwise.reference.likeness.JournalName;
import gapwise.reference.likeness.Letters;
import gapwise.reference.likeness.PageSpan;
import gapwise.reference.likeness.PeopleLikeness;
import gapwise.reference.likeness.TitleLikeness;
import gapwise.reference.likeness.TitleWords;
import java.util.Objects;
import java.util.Optional;

/**
 * What two records have in common, field by field; what follows is decided in {@link Judge}.
 *
 * @param doi whether their DOIs agree
 * @param pmid whether their PubMed numbers agree
 * @param title likeness of their titles, the closest of all
 * @param otherLanguage whether the titles may be one title in two languages
 * @param team whether their authors agree
 * @param people likeness of their persons
 * @param journal whether their journals agree
 * @param volume whether their volumes agree
 * @param page whether their first pages agree
 * @param yearsApart years between them; empty if one has none
 */
record Comparison(
    Agreement doi,
    Agreement pmid,
    TitleLikeness title,
    boolean otherLanguage,
    Team team,
    PeopleLikeness people,
    Agreement journal,
    Agreement volume,
    Agreement page,
    Optional<Integer> yearsApart) {

  /** Of two values. */
  enum Agreement {
    SAME,
    UNKNOWN,
    DIFFERENT
  }

  /** Of two lists of authors. */
  enum Team {
    ONE,
    SOME,
    UNKNOWN,
    NOBODY
  }

  /** Words in common, of the shorter title, below which titles alone make no proposal. */
  private static final double SOME_WORDS = 0.4;

  /** A quick look whether comparing in full can lead to anything. */
  static boolean isWorthwhile(Profile one, Profile two) {
    return isEqual(one.doi(), two.doi())
        || isEqual(one.pmid(), two.pmid())
        || isEqual(one.trial(), two.trial())
        || isEqual(one.pages().map(PageSpan::first), two.pages().map(PageSpan::first))
        || !one.links().isEmpty()
        || !two.links().isEmpty()
        || one.titles().size() > 1
        || two.titles().size() > 1
        || sharesWords(one.title(), two.title());
  }

  private static boolean isEqual(Optional<String> one, Optional<String> two) {
    return one.isPresent() && one.equals(two);
  }

  private static boolean sharesWords(TitleWords one, TitleWords two) {
    int common = 0;
    for (String word : one.words()) {
      common += two.words().contains(word) ? 1 : 0;
    }
    int shorter = Math.min(one.words().size(), two.words().size());
    return common >= SOME_WORDS * shorter || one.letters().equals(two.letters());
  }

  static Comparison of(Profile one, Profile two) {
    PeopleLikeness people = PeopleLikeness.of(one.people(), two.people());
    return new Comparison(
        agreement(one.doi(), two.doi()),
        agreement(one.pmid(), two.pmid()),
        title(one, two),
        mayBeTranslated(one, two),
        team(one, two, people),
        people,
        journal(one, two),
        agreement(one.volume(), two.volume()),
        agreement(one.pages().map(PageSpan::first), two.pages().map(PageSpan::first)),
        yearsApart(one, two));
  }

  /** Journal not another, volume and first page the same: where one paper starts. */
  boolean isSamePlace() {
    boolean volumeOrYear =
        volume == Agreement.SAME
            || (volume == Agreement.UNKNOWN && journal == Agreement.SAME && isSameYear());
    return page == Agreement.SAME && volumeOrYear && journal != Agreement.DIFFERENT;
  }

  /** Whether pages, volume or journal say that they stand in two places. */
  boolean isOtherPlace() {
    return page == Agreement.DIFFERENT
        || journal == Agreement.DIFFERENT
        || volume == Agreement.DIFFERENT;
  }

  /** The same year or the next; unknown years do not speak against it. */
  boolean isNearInTime() {
    return yearsApart.map(years -> years <= 1).orElse(true);
  }

  boolean isSameYear() {
    return yearsApart.map(years -> years == 0).orElse(false);
  }

  boolean sharesNumber() {
    return doi == Agreement.SAME || pmid == Agreement.SAME;
  }

  boolean numbersDiffer() {
    return doi == Agreement.DIFFERENT || pmid == Agreement.DIFFERENT;
  }

  private static TitleLikeness title(Profile one, Profile two) {
    TitleLikeness best = TitleLikeness.of(one.title(), two.title());
    if (one.titles().size() == 1 && two.titles().size() == 1) {
      return best;
    }
    for (TitleWords first : one.titles()) {
      for (TitleWords second : two.titles()) {
        TitleLikeness next = TitleLikeness.of(first, second);
        if (next.kind().compareTo(best.kind()) < 0) {
          best = next;
        }
      }
    }
    return best;
  }

  /** One title is printed as a translation and the record gives no other. */
  private static boolean mayBeTranslated(Profile one, Profile two) {
    String first = language(one);
    String second = language(two);
    return one.title().bracketed() != two.title().bracketed()
        || Letters.isInAnotherScript(one.title().letters())
            != Letters.isInAnotherScript(two.title().letters())
        || (!first.isEmpty() && !second.isEmpty() && !first.equals(second));
  }

  private static String language(Profile profile) {
    String language = profile.reference().language().orElse("").toLowerCase(java.util.Locale.ROOT);
    return language.length() < 2 ? "" : language.substring(0, 2);
  }

  private static Team team(Profile one, Profile two, PeopleLikeness people) {
    boolean group =
        one.groups().stream().anyMatch(name -> two.groups().contains(name) && name.length() > 3);
    if (people.isUnknown()) {
      return group ? Team.ONE : Team.UNKNOWN;
    }
    if (people.isOneTeam()) {
      return Team.ONE;
    }
    if (people.isNobody() && !group) {
      return people.notComparable() > 0 ? Team.UNKNOWN : Team.NOBODY;
    }
    return Team.SOME;
  }

  private static Agreement journal(Profile one, Profile two) {
    Agreement best = Agreement.UNKNOWN;
    for (JournalName first : one.journals()) {
      for (JournalName second : two.journals()) {
        JournalLikeness likeness = JournalLikeness.of(first, second);
        if (likeness == JournalLikeness.SAME) {
          return Agreement.SAME;
        }
        best = likeness == JournalLikeness.DIFFERENT ? Agreement.DIFFERENT : best;
      }
    }
    return best;
  }

  private static Agreement agreement(Optional<String> one, Optional<String> two) {
    if (one.isEmpty() || two.isEmpty()) {
      return Agreement.UNKNOWN;
    }
    return Objects.equals(one, two) ? Agreement.SAME : Agreement.DIFFERENT;
  }

  private static Optional<Integer> yearsApart(Profile one, Profile two) {
    return one.year().isPresent() && two.year().isPresent()
        ? Optional.of(Math.abs(one.year().getAsInt() - two.year().getAsInt()))
        : Optional.empty();
  }
}
