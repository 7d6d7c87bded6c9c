package gapwise.reference.pair;

import gapwise.reference.Link;
import gapwise.reference.likeness.TitleLikeness;
import gapwise.reference.pair.Comparison.Agreement;
import gapwise.reference.pair.Comparison.Team;
import java.util.Optional;

/** Whether two publications of different nature belong together. */
final class Relations {
  /** Share of words from which the titles of an abstract and its paper are taken for one. */
  private static final double MOSTLY = 0.75;

  /** Comments come soon; later ones name their paper by its number or place. */
  private static final int YEARS_OF_COMMENT = 4;

  private Relations() {}

  /** The sentence that tells how they belong together; empty if they do not. */
  static Optional<String> between(Profile one, Profile two, Comparison both) {
    Optional<String> linked = linked(one, two).or(() -> linked(two, one));
    if (linked.isPresent()) {
      return linked;
    }
    if (one.nature() == two.nature()) {
      return sameNature(one, two, both);
    }
    if (one.nature().isNotice()) {
      return notice(one, two, both);
    }
    if (two.nature().isNotice()) {
      return notice(two, one, both);
    }
    return publications(one, two, both);
  }

  private static Optional<String> linked(Profile from, Profile to) {
    return LinkMatch.between(from, to).map(link -> said(from, link) + ".");
  }

  private static String said(Profile from, Link link) {
    return from.key().label() + " says of the other \"" + link.relation().words() + "\"";
  }

  /** A notice carries the title of its paper, or it is by the same people in the same journal. */
  private static Optional<String> notice(Profile notice, Profile paper, Comparison both) {
    if (paper.nature().isNotice() || isLinkedElsewhere(notice, paper)) {
      return Optional.empty();
    }
    TitleLikeness title = both.title();
    boolean part =
        title.kind() == TitleLikeness.Kind.SUBTITLE_LEFT_OUT
            || (title.kind() == TitleLikeness.Kind.CUT && both.team() == Team.ONE);
    boolean told = title.kind().isOneTitle() || (part && notice.hasTellingTitle());
    boolean people =
        notice.nature() == Nature.COMMENT
            || both.team() != Team.NOBODY
            || title.kind().isOneTitle();
    boolean telling = paper.hasTellingTitle() || both.team() == Team.ONE;
    return told
            && people
            && telling
            && both.journal() != Agreement.DIFFERENT
            && isAfter(notice, paper)
        ? Optional.of("One is " + notice.nature().words() + " with the title of the other.")
        : Optional.empty();
  }

  /** A notice comes out with its paper or later; the year of a paper may be that of its print. */
  private static boolean isAfter(Profile notice, Profile paper) {
    if (paper.year().isEmpty() || notice.year().isEmpty()) {
      return true;
    }
    int later = notice.year().getAsInt() - paper.year().getAsInt();
    return later >= -1 && (notice.nature() != Nature.COMMENT || later <= YEARS_OF_COMMENT);
  }

  /** Whether a notice names another paper by a number of the kind that this paper has too. */
  private static boolean isLinkedElsewhere(Profile notice, Profile paper) {
    return notice.links().stream()
        .anyMatch(
            link ->
                link.relation().isOfNotice()
                    && ((link.doi().isPresent() && paper.doi().isPresent())
                        || (link.pmid().isPresent() && paper.pmid().isPresent())));
  }

  private static Optional<String> publications(Profile one, Profile two, Comparison both) {
    TitleLikeness title = both.title();
    boolean team =
        both.team() == Team.ONE || (both.team() == Team.SOME && both.people().common() >= 2);
    boolean unknown =
        both.team() == Team.UNKNOWN && title.kind().isOneTitle() && one.hasTellingTitle();
    boolean protocol = one.nature() == Nature.PROTOCOL || two.nature() == Nature.PROTOCOL;
    boolean trial = one.trial().isPresent() && one.trial().equals(two.trial());
    boolean alike =
        title.kind().isOneTitle()
            || title.kind().isPart()
            || title.kind() == TitleLikeness.Kind.OTHER_SUBTITLE
            || (title.share() >= (protocol ? 0.5 : MOSTLY)
                && !SerialParts.are(one.title(), two.title()));
    if (trial || (alike && (team || unknown))) {
      return Optional.of(
          "One is "
              + one.nature().words()
              + ", the other "
              + two.nature().words()
              + (trial ? " of the trial " + one.trial().orElse("") : "")
              + ".");
    }
    return Optional.empty();
  }

  /** Two publications of one trial, or one work shown at two meetings. */
  private static Optional<String> sameNature(Profile one, Profile two, Comparison both) {
    if (one.nature() == Nature.MEETING_ABSTRACT
        && both.team() == Team.ONE
        && both.title().kind().isOneTitle()
        && !both.sharesNumber()
        && both.isOtherPlace()
        && !both.isSamePlace()) {
      return Optional.of("Both are abstracts of one work, shown at two meetings.");
    }
    boolean trial = one.trial().isPresent() && one.trial().equals(two.trial());
    boolean other =
        !both.title().kind().isOneTitle()
            && !both.title().kind().isPart()
            && !both.sharesNumber()
            && !both.isSamePlace();
    return trial && other
        ? Optional.of("Both name the trial " + one.trial().orElse("") + ".")
        : Optional.empty();
  }
}
