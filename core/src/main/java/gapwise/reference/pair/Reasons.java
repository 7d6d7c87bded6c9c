package gapwise.reference.pair;

import gapwise.reference.likeness.TitleLikeness;
import gapwise.reference.pair.Comparison.Agreement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What speaks for and against two records being one paper, in sentences. */
final class Reasons {
  /** Words of a title that are quoted. */
  private static final int WORDS_SHOWN = 6;

  private Reasons() {}

  static List<String> of(Profile one, Profile two, Comparison both) {
    List<String> reasons = new ArrayList<>();
    number(both.doi(), "DOI", one.doi(), two.doi()).ifPresent(reasons::add);
    number(both.pmid(), "PubMed number", one.pmid(), two.pmid()).ifPresent(reasons::add);
    reasons.add(title(one, two, both));
    reasons.add(people(one, two, both));
    place(both).ifPresent(reasons::add);
    return reasons;
  }

  private static Optional<String> number(
      Agreement agreement, String what, Optional<String> one, Optional<String> two) {
    return switch (agreement) {
      case SAME -> Optional.of("Both have the " + what + " " + one.orElse("") + ".");
      case DIFFERENT ->
          Optional.of(
              "The " + what + "s differ, " + one.orElse("") + " and " + two.orElse("") + ".");
      case UNKNOWN -> Optional.empty();
    };
  }

  private static String title(Profile one, Profile two, Comparison both) {
    TitleLikeness title = both.title();
    String words = differing(one, two, title);
    return switch (title.kind()) {
      case EQUAL -> "The titles are the same.";
      case SLIPS -> "The titles are the same but for slips of spelling.";
      case CUT -> "One title breaks off within the other.";
      case SUBTITLE_LEFT_OUT -> "One title is the other without its subtitle.";
      case OTHER_SUBTITLE -> "The titles are the same before the subtitle and differ in it" + words;
      case SOME_WORDS_DIFFER -> "The titles are much alike and differ" + words;
      case DIFFERENT ->
          both.otherLanguage()
              ? "The titles differ; they may be in two languages."
              : "The titles differ.";
    };
  }

  private static String differing(Profile one, Profile two, TitleLikeness title) {
    String first = printed(one, title.onlyFirst());
    String second = printed(two, title.onlySecond());
    if (first.isEmpty() && second.isEmpty()) {
      return ".";
    }
    return ": " + quoted(first) + " here, " + quoted(second) + " there.";
  }

  /** The first few of some words of a title, as they were printed. */
  private static String printed(Profile profile, List<String> words) {
    List<String> printed = new ArrayList<>();
    for (String word : words.subList(0, Math.min(WORDS_SHOWN, words.size()))) {
      int at = profile.title().words().indexOf(word);
      printed.add(at < 0 ? word : profile.title().printed().get(at));
    }
    return String.join(" ", printed);
  }

  private static String quoted(String words) {
    return words.isEmpty() ? "nothing" : "\"" + words + "\"";
  }

  private static String people(Profile one, Profile two, Comparison both) {
    int common = both.people().common();
    return switch (both.team()) {
      case ONE ->
          common == 0
              ? "The same group wrote both."
              : Math.max(both.people().first(), both.people().second()) == 1
                  ? "The one author agrees."
                  : common
                      + " of "
                      + Math.max(both.people().first(), both.people().second())
                      + " authors agree"
                      + (both.people().sameOrder() ? "." : ", in another order.");
      case SOME ->
          "Only "
              + common
              + " of "
              + Math.max(both.people().first(), both.people().second())
              + " authors agree.";
      case NOBODY -> "No author agrees.";
      case UNKNOWN -> whyUnknown(one, two);
    };
  }

  private static String whyUnknown(Profile one, Profile two) {
    if (one.reference().authors().isEmpty() || two.reference().authors().isEmpty()) {
      return "One record names no authors.";
    }
    return one.people().isEmpty() != two.people().isEmpty()
        ? "One record names a group, the other persons."
        : "The authors cannot be compared, as they stand in two scripts or as groups.";
  }

  private static Optional<String> place(Comparison both) {
    List<String> same = new ArrayList<>();
    List<String> different = new ArrayList<>();
    add(both.journal(), "journal", same, different);
    add(both.volume(), "volume", same, different);
    add(both.page(), "first page", same, different);
    both.yearsApart().ifPresent(years -> (years == 0 ? same : different).add("year"));
    StringBuilder sentence = new StringBuilder();
    if (!same.isEmpty()) {
      sentence.append("They agree in ").append(listed(same));
    }
    if (!different.isEmpty()) {
      sentence
          .append(same.isEmpty() ? "They differ in " : " and differ in ")
          .append(listed(different));
    }
    return sentence.isEmpty()
        ? Optional.of("No place of print can be compared.")
        : Optional.of(sentence + ".");
  }

  private static void add(
      Agreement agreement, String what, List<String> same, List<String> different) {
    if (agreement == Agreement.SAME) {
      same.add(what);
    } else if (agreement == Agreement.DIFFERENT) {
      different.add(what);
    }
  }

  private static String listed(List<String> words) {
    return words.size() == 1
        ? words.get(0)
        : String.join(", ", words.subList(0, words.size() - 1))
            + " and "
            + words.get(words.size() - 1);
  }
}
