package gapwise.reference.pair;

import gapwise.reference.likeness.TitleLikeness;
import gapwise.reference.pair.Comparison.Agreement;
import gapwise.reference.pair.Comparison.Team;
import java.util.Optional;

/**
 * What is proposed of two records of one nature: copies, perhaps copies, or nothing. The rules
 * weigh as a person does who has only the two records: numbers first, then title, people and place;
 * "same" needs two of these that are hard to share by chance and none that speaks against it.
 * Common practice, no source; docs/methods/duplicates.md tells what they find and miss.
 */
final class Judge {
  /** Share of common words from which two titles that differ are worth a look. */
  private static final double MOSTLY = 0.75;

  private Judge() {}

  static Optional<Verdict> of(Profile one, Profile two, Comparison both) {
    if (both.sharesNumber()) {
      return byNumber(one, two, both);
    }
    TitleLikeness.Kind title = both.title().kind();
    if (title.isOneTitle()) {
      return oneTitle(one, two, both);
    }
    if (title.isPart()) {
      return partOfTitle(both);
    }
    if (title == TitleLikeness.Kind.OTHER_SUBTITLE) {
      return otherSubtitle(one, two, both);
    }
    return otherTitle(one, two, both);
  }

  /** A shared DOI or PubMed number, which can be wrong, or that of a whole supplement. */
  private static Optional<Verdict> byNumber(Profile one, Profile two, Comparison both) {
    boolean twoNumbers = both.doi() == Agreement.SAME && both.pmid() == Agreement.SAME;
    TitleLikeness title = both.title();
    boolean alike = title.kind().isOneTitle() || title.kind().isPart();
    boolean contradicted = both.page() == Agreement.DIFFERENT && both.team() == Team.NOBODY;
    if (alike && !contradicted && (both.team() != Team.NOBODY || both.isSamePlace())) {
      boolean otherNumber = both.numbersDiffer() && !both.isSamePlace();
      return Optional.of(otherNumber ? Verdict.POSSIBLE : Verdict.SAME);
    }
    boolean meeting =
        one.nature() == Nature.MEETING_ABSTRACT && two.nature() == Nature.MEETING_ABSTRACT;
    boolean fits = both.team() == Team.ONE && !both.isOtherPlace() && both.isNearInTime();
    boolean otherWords = title.share() >= MOSTLY && !title.numbersDiffer() && !meeting;
    boolean otherLanguage = both.isSamePlace() && (both.otherLanguage() || twoNumbers);
    if (fits && (otherWords || otherLanguage)) {
      return Optional.of(Verdict.SAME);
    }
    boolean supplement =
        meeting
            && both.pmid() != Agreement.SAME
            && both.page() == Agreement.DIFFERENT
            && !alike
            && title.share() < MOSTLY;
    return supplement ? Optional.empty() : Optional.of(Verdict.POSSIBLE);
  }

  private static Optional<Verdict> oneTitle(Profile one, Profile two, Comparison both) {
    boolean telling = one.hasTellingTitle() && two.hasTellingTitle();
    return switch (both.team()) {
      case ONE -> oneTitleOneTeam(one, two, both, telling);
      case SOME ->
          both.isSamePlace()
              ? Optional.of(Verdict.SAME)
              : possibleIf(
                  (telling && both.isNearInTime())
                      || (both.journal() == Agreement.SAME && telling));
      case UNKNOWN -> oneTitleUnknownTeam(both, telling);
      case NOBODY ->
          both.isSamePlace() && both.journal() == Agreement.SAME && both.isNearInTime()
              ? Optional.of(telling ? Verdict.SAME : Verdict.POSSIBLE)
              : possibleIf(
                  telling
                      && both.isNearInTime()
                      && both.journal() == Agreement.SAME
                      && both.page() != Agreement.DIFFERENT
                      && both.volume() != Agreement.DIFFERENT);
    };
  }

  private static Optional<Verdict> oneTitleOneTeam(
      Profile one, Profile two, Comparison both, boolean telling) {
    if (both.isSamePlace() && (telling || both.isNearInTime())) {
      return Optional.of(Verdict.SAME);
    }
    boolean samePages =
        both.page() == Agreement.SAME
            && (both.volume() == Agreement.SAME || both.journal() == Agreement.SAME)
            && one.pages().equals(two.pages());
    if (telling && samePages && both.isNearInTime()) {
      return Optional.of(Verdict.SAME);
    }
    boolean otherKind =
        !one.reference().kind().equals(two.reference().kind()) && both.journal() != Agreement.SAME;
    if (both.isOtherPlace() || both.numbersDiffer() || !both.isNearInTime() || otherKind) {
      return possibleIf(telling || (both.isNearInTime() && !both.isOtherPlace()));
    }
    return Optional.of(telling ? Verdict.SAME : Verdict.POSSIBLE);
  }

  private static Optional<Verdict> oneTitleUnknownTeam(Comparison both, boolean telling) {
    if (both.isSamePlace()
        && (telling || (both.journal() == Agreement.SAME && both.isSameYear()))) {
      return Optional.of(
          telling || both.title().kind() == TitleLikeness.Kind.EQUAL
              ? Verdict.SAME
              : Verdict.POSSIBLE);
    }
    return possibleIf(telling && both.isNearInTime() && both.page() != Agreement.DIFFERENT);
  }

  private static Optional<Verdict> partOfTitle(Comparison both) {
    if (both.title().numbersDiffer()
        && both.title().kind() == TitleLikeness.Kind.CUT
        && both.page() == Agreement.DIFFERENT) {
      return Optional.empty();
    }
    boolean place = both.isSamePlace() && both.isNearInTime();
    return switch (both.team()) {
      case ONE ->
          place && !both.numbersDiffer()
              ? Optional.of(Verdict.SAME)
              : place ? Optional.of(Verdict.POSSIBLE) : partElsewhere(both);
      case SOME, UNKNOWN ->
          place && both.journal() == Agreement.SAME && both.volume() == Agreement.SAME
              ? Optional.of(Verdict.SAME)
              : possibleIf(
                  !both.isOtherPlace()
                      && both.isNearInTime()
                      && (both.team() == Team.SOME || both.journal() == Agreement.SAME));
      case NOBODY -> possibleIf(place && both.journal() == Agreement.SAME);
    };
  }

  /** One team, one title a part of the other, and not known to start at one page. */
  private static Optional<Verdict> partElsewhere(Comparison both) {
    if (!both.isOtherPlace() && both.isNearInTime()) {
      return Optional.of(Verdict.POSSIBLE);
    }
    boolean later =
        both.yearsApart().orElse(0) >= 1
            && both.title().kind() == TitleLikeness.Kind.SUBTITLE_LEFT_OUT;
    return later ? Optional.of(Verdict.RELATED) : possibleIf(both.page() != Agreement.DIFFERENT);
  }

  private static Optional<Verdict> otherSubtitle(Profile one, Profile two, Comparison both) {
    if (both.team() != Team.ONE && both.team() != Team.SOME) {
      return possibleIf(both.isSamePlace() && both.journal() == Agreement.SAME);
    }
    if (both.isSamePlace()) {
      return Optional.of(Verdict.POSSIBLE);
    }
    if (SerialParts.are(one.title(), two.title())) {
      return Optional.empty();
    }
    if (both.yearsApart().orElse(0) >= 1
        && (both.team() == Team.ONE || both.people().common() >= 2)) {
      return Optional.of(Verdict.RELATED);
    }
    return possibleIf(both.page() != Agreement.DIFFERENT);
  }

  private static Optional<Verdict> otherTitle(Profile one, Profile two, Comparison both) {
    TitleLikeness title = both.title();
    boolean team = both.team() == Team.ONE;
    if (team && both.isSamePlace() && both.isNearInTime() && both.journal() == Agreement.SAME) {
      boolean sure =
          fillTheSamePages(one, two)
              && !both.numbersDiffer()
              && isOneUnderTwoTitles(one, two, title);
      return Optional.of(sure ? Verdict.SAME : Verdict.POSSIBLE);
    }
    if (both.isSamePlace()
        && both.journal() == Agreement.SAME
        && title.share() >= MOSTLY
        && both.isNearInTime()) {
      return Optional.of(Verdict.POSSIBLE);
    }
    boolean open = !both.isOtherPlace() && both.isNearInTime() && both.page() == Agreement.UNKNOWN;
    return possibleIf(team && open && title.share() >= MOSTLY && !title.numbersDiffer());
  }

  /**
   * From one first page to one last page there is room for one paper; one page may hold several.
   */
  private static boolean fillTheSamePages(Profile one, Profile two) {
    return one.nature() != Nature.MEETING_ABSTRACT
        && one.pages().equals(two.pages())
        && one.pages().filter(pages -> !pages.first().equals(pages.last())).isPresent();
  }

  /**
   * Titles of two languages, or with a few other words; parts of a work have titles of their own.
   */
  private static boolean isOneUnderTwoTitles(Profile one, Profile two, TitleLikeness title) {
    boolean alike = title.share() >= MOSTLY && !title.numbersDiffer();
    boolean foreign = title.kind() == TitleLikeness.Kind.DIFFERENT;
    return (alike || foreign) && !SerialParts.are(one.title(), two.title());
  }

  private static Optional<Verdict> possibleIf(boolean condition) {
    return condition ? Optional.of(Verdict.POSSIBLE) : Optional.empty();
  }
}
