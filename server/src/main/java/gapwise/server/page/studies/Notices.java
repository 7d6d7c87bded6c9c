package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.reference.kept.Member;
import gapwise.reference.pair.Standing;
import gapwise.server.home.References;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What kept references say became of the paper of a study. Nothing follows from it by itself.
 *
 * @param sentences what they say, with who says so
 * @param underway whether the references are still being looked through
 * @param mark id of the study, where it is said to be retracted and its record does not say so
 */
public record Notices(List<String> sentences, boolean underway, Optional<String> mark) {
  public Notices {
    sentences = List.copyOf(sentences);
  }

  static Notices of(Study study, References references) {
    Optional<Map<String, List<Standing>>> all = references.standings();
    List<Standing> told = all.orElse(Map.of()).getOrDefault(Member.ofStudy(study.id()), List.of());
    boolean retracted =
        told.stream().anyMatch(standing -> standing.kind() == Standing.Kind.RETRACTED);
    return new Notices(
        told.stream().map(Notices::sentence).toList(),
        all.isEmpty(),
        retracted && study.reportKind() != ReportKind.RETRACTION
            ? Optional.of(study.id())
            : Optional.empty());
  }

  private static String sentence(Standing standing) {
    Map<String, String> why = Map.of("why", standing.sentence());
    return switch (standing.kind()) {
      case RETRACTED -> say("studies.told-retracted", why);
      case CORRECTED -> say("studies.told-corrected", why);
      case CONCERN -> say("studies.told-concern", why);
    };
  }

  /** What a list says behind the name of a study, by its id; only of those that are told of. */
  static Map<String, String> flags(References references) {
    Map<String, String> flags = new HashMap<>();
    references
        .standings()
        .orElse(Map.of())
        .forEach(
            (member, told) ->
                Member.study(member)
                    .ifPresent(
                        study ->
                            flags.put(
                                study,
                                told.stream()
                                    .map(standing -> flag(standing.kind()))
                                    .distinct()
                                    .collect(Collectors.joining(", ")))));
    return flags;
  }

  private static String flag(Standing.Kind kind) {
    return switch (kind) {
      case RETRACTED -> say("studies.flag-retracted");
      case CORRECTED -> say("studies.flag-corrected");
      case CONCERN -> say("studies.flag-concern");
    };
  }
}
