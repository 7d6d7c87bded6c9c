package gapwise.cohort;

import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.Doi;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.reference.likeness.PageSpan;
import gapwise.reference.likeness.TitleWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What is compared of one study: small beside the record, so that those of a whole evidence base
 * fit into memory.
 *
 * @param id id of the study
 * @param print where it was published
 * @param kind kind of publication
 * @param team authors
 * @param centres hospitals that are named
 * @param country country without what stands in brackets, folded; empty where not given
 * @param recruited when patients were taken in
 * @param recruitedAsPrinted the same for people
 * @param groups its groups
 * @param stated what its record says already of others
 * @param stoodOn a hash of all this
 */
record StudyFacts(
    String id,
    Print print,
    ReportKind kind,
    Team team,
    List<CentreName> centres,
    String country,
    Recruitment recruited,
    String recruitedAsPrinted,
    List<GroupFacts> groups,
    Stated stated,
    String stoodOn) {

  /**
   * The citation.
   *
   * @param titles title, then other spellings
   * @param doi small letters, without a resolver
   */
  record Print(
      List<TitleWords> titles,
      OptionalInt year,
      String journal,
      String volume,
      Optional<PageSpan> pages,
      Optional<String> doi,
      Optional<String> pmid,
      Optional<String> register) {
    Print {
      titles = List.copyOf(titles);
    }
  }

  /**
   * Links that the record states.
   *
   * @param cohort its cohort, folded
   * @param others ids it names
   * @param allPatients patients of all groups together, where the paper says so
   */
  record Stated(Optional<String> cohort, Set<String> others, OptionalInt allPatients) {
    Stated {
      others = Set.copyOf(others);
    }
  }

  StudyFacts {
    centres = List.copyOf(centres);
    groups = List.copyOf(groups);
  }

  static StudyFacts of(Study study) {
    String country = study.country().map(text -> text.replaceAll("\\([^)]*\\)", "")).orElse("");
    List<String> others = new ArrayList<>(study.sameStudyAs());
    others.addAll(study.overlapSuspectedWith());
    List<GroupFacts> groups =
        study.arms().stream().map((Arm arm) -> GroupFacts.of(study, arm)).toList();
    return new StudyFacts(
        study.id(),
        print(study.citation()),
        study.reportKind(),
        Team.of(study.citation()),
        study.centres().stream()
            .map(name -> CentreName.of(name, country))
            .filter(CentreName::isNamed)
            .toList(),
        String.join("", CentreName.words(country)),
        Recruitment.of(study),
        Recruitment.printed(study),
        groups,
        new Stated(
            study.cohort().map(name -> name.strip().toLowerCase(Locale.ROOT)),
            Set.copyOf(others),
            study.whole().patients()),
        Fingerprint.of(study, groups));
  }

  private static Print print(Citation citation) {
    List<TitleWords> titles = new ArrayList<>(List.of(TitleWords.of(citation.title())));
    citation.otherSpellings().forEach(other -> titles.add(TitleWords.of(other)));
    return new Print(
        titles,
        citation.year(),
        citation.journal().orElse(""),
        citation.volume().orElse("").strip(),
        citation.pages().flatMap(PageSpan::of),
        citation.doi().map(doi -> Doi.bare(doi).toLowerCase(Locale.ROOT)),
        citation.pmid().map(String::strip),
        citation.register().map(number -> number.toLowerCase(Locale.ROOT).replaceAll("\\W", "")));
  }

  /** Whether one of the two says of the other already that patients are shared, or may be. */
  boolean isLinkedTo(StudyFacts other) {
    return stated.others().contains(other.id)
        || other.stated.others().contains(id)
        || stated.cohort().isPresent() && stated.cohort().equals(other.stated.cohort());
  }

  boolean describesPatients() {
    return groups.stream().anyMatch(group -> !group.prints().isEmpty());
  }

  /** Patients of all groups together, 0 where no group says. */
  int patients() {
    return groups.stream().mapToInt(group -> group.patients().orElse(0)).sum();
  }

  /** Whether it says to be of a register or a whole country, and names no hospital. */
  boolean isRegister() {
    return centres.isEmpty() && TitleSays.register(print);
  }
}
