package gapwise.cohort;

import static gapwise.sentence.Sentences.say;

import gapwise.reference.likeness.JournalLikeness;
import gapwise.reference.likeness.PageSpan;
import gapwise.reference.likeness.TitleLikeness;
import gapwise.reference.likeness.TitleWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Whether two records are of one paper, or of two prints of one report such as an abstract and its
 * article: by the citation and the numbers, whatever the hospital is called.
 */
final class PrintedTwice {
  /** An abstract is printed as an article within so many years. Common practice, no source. */
  private static final int YEARS_TO_THE_ARTICLE = 4;

  private final StudyFacts one;
  private final StudyFacts two;
  private final List<Sign> signs = new ArrayList<>();
  private final boolean titlesAlike;
  private final boolean titlesEqual;
  private final boolean team;
  private final boolean someAuthor;
  private final boolean authorsUnknown;
  private final boolean asked;
  private final boolean sameFirst;
  private final boolean numbersAlike;
  private final boolean identifiersDiffer;

  private PrintedTwice(StudyFacts one, StudyFacts two, Circumstances circumstances) {
    this.one = one;
    this.two = two;
    team = circumstances.teamAgrees();
    someAuthor = circumstances.shared() > 0;
    authorsUnknown = !circumstances.teamsKnown();
    sameFirst = one.team().sameFirst(two.team());
    numbersAlike = circumstances.methodShared() && numbersAlike(one, two);
    identifiersDiffer =
        differ(one.print().doi(), two.print().doi())
            || differ(one.print().pmid(), two.print().pmid());
    // To hold titles against each other costs more than all else, and says nothing by itself.
    boolean soon = yearsApart().orElse(0) <= YEARS_TO_THE_ARTICLE;
    boolean ask =
        numbersAlike
            || sharesIdentifier()
            || soon && (team || sameFirst || authorsUnknown)
            || samePlace();
    TitleLikeness.Kind titles =
        ask ? titles(one.print().titles(), two.print().titles()) : TitleLikeness.Kind.DIFFERENT;
    titlesEqual = titles.isOneTitle();
    titlesAlike = titlesEqual || titles.isPart();
    asked = ask;
  }

  static Optional<Found> judge(StudyFacts one, StudyFacts two, Circumstances circumstances) {
    PrintedTwice judge = new PrintedTwice(one, two, circumstances);
    return judge.asked ? judge.judge() : Optional.empty();
  }

  private Optional<Found> judge() {
    if (sharesIdentifier()) {
      boolean likely = titlesAlike || sameFirst;
      return found(Verdict.SAME_PAPER, likely ? Strength.STRONG : Strength.MODERATE);
    }
    boolean oneKind = one.kind() == two.kind();
    boolean placeDiffers = placeDiffers();
    int years = yearsApart().orElse(Integer.MAX_VALUE);
    boolean byWhom = team || sameFirst || authorsUnknown && titlesEqual;
    if (samePlace() && byWhom && oneKind && !numbersDiffer()) {
      return found(
          Verdict.SAME_PAPER,
          identifiersDiffer || !titlesAlike ? Strength.MODERATE : Strength.STRONG);
    }
    boolean numbersOfSome = numbersAlike && (team || sameFirst || someAuthor);
    if (numbersOfSome && (!oneKind || placeDiffers)) {
      return found(Verdict.OVERLAPPING, Strength.STRONG);
    }
    boolean nothingDiffers = oneKind && !placeDiffers && !identifiersDiffer;
    boolean titled = titlesEqual && years == 0 && (sameFirst || authorsUnknown);
    boolean numbered = numbersOfSome && years <= 1;
    if (nothingDiffers && (titled && !numbersDiffer() || numbered)) {
      return found(Verdict.SAME_PAPER, numbersAlike ? Strength.STRONG : Strength.MODERATE);
    }
    if (!oneKind && titlesAlike && team && years <= YEARS_TO_THE_ARTICLE) {
      return found(Verdict.OVERLAPPING, Strength.MODERATE);
    }
    return titled && !placeDiffers || numbersAlike && agreeingNumbers() >= 2 * PrintedNumbers.MANY
        ? found(Verdict.POSSIBLE, Strength.WEAK)
        : Optional.empty();
  }

  /** Whether most of the numbers that both print are others, as of two reports. */
  private boolean numbersDiffer() {
    int agreeing = 0;
    int differing = 0;
    for (GroupFacts group : one.groups()) {
      for (GroupFacts other : two.groups()) {
        if (group.arm().equals(other.arm())) {
          agreeing += group.numbers().agreeing(other.numbers());
          differing += group.numbers().differing(other.numbers());
        }
      }
    }
    return differing > agreeing && differing >= PrintedNumbers.MANY;
  }

  private Optional<Found> found(Verdict verdict, Strength strength) {
    tellWhatAgrees();
    return Optional.of(new Found(verdict, strength, signs));
  }

  private void tellWhatAgrees() {
    if (sharesIdentifier()) {
      signs.add(
          Sign.agrees(
              Fact.IDENTIFIER,
              say("cohort.identifier-shared", Map.of("identifier", sharedIdentifier()))));
    } else if (identifiersDiffer) {
      signs.add(Sign.against(Fact.IDENTIFIER, say("cohort.identifier-differs")));
    }
    if (titlesAlike) {
      signs.add(
          Sign.agrees(
              Fact.TITLE, titlesEqual ? say("cohort.title-same") : say("cohort.title-shorter")));
    } else if (sharesIdentifier()) {
      signs.add(Sign.against(Fact.TITLE, say("cohort.title-differs")));
    }
    if (samePlace()) {
      signs.add(Sign.agrees(Fact.PLACE_IN_PRINT, say("cohort.place-same")));
    } else if (placeDiffers()) {
      signs.add(Sign.against(Fact.PLACE_IN_PRINT, say("cohort.place-differs")));
    }
    if (one.kind() != two.kind()) {
      signs.add(
          Sign.agrees(
              Fact.REPORT_KIND,
              say(
                  "cohort.kinds-of-report",
                  Map.of("first", one.kind().label(), "second", two.kind().label()))));
    }
    if (numbersAlike) {
      signs.add(
          Sign.agrees(
              Fact.NUMBERS, say("cohort.numbers-same", Map.of("numbers", agreeingNumbers()))));
    }
  }

  private boolean sharesIdentifier() {
    return shared(one.print().doi(), two.print().doi())
        || shared(one.print().pmid(), two.print().pmid());
  }

  private String sharedIdentifier() {
    return shared(one.print().doi(), two.print().doi())
        ? "DOI (" + one.print().doi().orElseThrow() + ")"
        : "PubMed number (" + one.print().pmid().orElseThrow() + ")";
  }

  private static boolean shared(Optional<String> one, Optional<String> two) {
    return one.isPresent() && one.equals(two);
  }

  private static boolean differ(Optional<String> one, Optional<String> two) {
    return one.isPresent() && two.isPresent() && !one.equals(two);
  }

  private JournalLikeness journals() {
    return JournalLikeness.of(one.print().journal(), two.print().journal());
  }

  private boolean samePlace() {
    return !one.print().volume().isEmpty()
        && one.print().volume().equals(two.print().volume())
        && one.print().pages().isPresent()
        && two.print().pages().isPresent()
        && one.print().pages().get().first().equals(two.print().pages().get().first())
        && lastPagesFit(one.print().pages().get(), two.print().pages().get())
        && journals() != JournalLikeness.DIFFERENT;
  }

  /** One record may give the first page alone. */
  private static boolean lastPagesFit(PageSpan one, PageSpan two) {
    return one.last().equals(two.last())
        || one.last().equals(one.first())
        || two.last().equals(two.first());
  }

  private boolean placeDiffers() {
    boolean volumes =
        !one.print().volume().isEmpty()
            && !two.print().volume().isEmpty()
            && !one.print().volume().equals(two.print().volume());
    boolean pages =
        one.print().pages().isPresent()
            && two.print().pages().isPresent()
            && !one.print().pages().get().first().equals(two.print().pages().get().first());
    return volumes || pages || journals() == JournalLikeness.DIFFERENT;
  }

  private OptionalInt yearsApart() {
    OptionalInt first = one.print().year();
    OptionalInt second = two.print().year();
    return first.isPresent() && second.isPresent()
        ? OptionalInt.of(Math.abs(first.getAsInt() - second.getAsInt()))
        : OptionalInt.empty();
  }

  private static TitleLikeness.Kind titles(List<TitleWords> some, List<TitleWords> others) {
    TitleLikeness.Kind closest = TitleLikeness.Kind.DIFFERENT;
    for (TitleWords first : some) {
      for (TitleWords second : others) {
        TitleLikeness.Kind kind = TitleLikeness.of(first, second).kind();
        closest = kind.compareTo(closest) < 0 ? kind : closest;
      }
    }
    return closest;
  }

  private int agreeingNumbers() {
    return one.groups().stream()
        .mapToInt(
            group ->
                two.groups().stream()
                    .filter(other -> other.numbers().areThoseOf(group.numbers()))
                    .mapToInt(other -> other.numbers().agreeing(group.numbers()))
                    .max()
                    .orElse(0))
        .sum();
  }

  /** Whether every group of the record with fewer has a group of the same numbers in the other. */
  private static boolean numbersAlike(StudyFacts one, StudyFacts two) {
    StudyFacts fewer = one.groups().size() <= two.groups().size() ? one : two;
    StudyFacts more = fewer == one ? two : one;
    return fewer.groups().stream()
        .allMatch(
            group ->
                more.groups().stream()
                    .anyMatch(
                        other ->
                            other.method().equals(group.method())
                                && other.numbers().areThoseOf(group.numbers())));
  }
}
