package gapwise.supplement;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.answer.LengthShape;
import gapwise.cohort.CohortDecision;
import gapwise.cohort.CohortLinks;
import gapwise.curation.EvidenceBase;
import gapwise.curation.StudiesAt;
import gapwise.demonstration.DemonstrationEvidence;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.MemoryIndex;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;

/**
 * The invented demonstration base with analyses of every way to ask, to be written as supplements.
 */
record DemonstrationSupplement(
    DocumentStore store, SupplementWriter writer, SupplementWriter.Wish wish)
    implements AutoCloseable {
  /** Version of the program that they say. */
  static final String VERSION = "test";

  private static final Edition EDITION =
      new Edition(VERSION, OptionalLong.of(67), Optional.of(LocalDate.of(2031, 2, 3)));

  static DemonstrationSupplement in(Path folder) throws IOException {
    List<Study> studies = DemonstrationEvidence.studies();
    DocumentStore store = DocumentStore.open(folder.resolve("home"), Clock.systemUTC());
    new EvidenceBase(store).saveAll(studies.iterator(), "ann", "invented", List.of());
    StudiesAt kept = StudiesAt.of(store, store.lastChange());
    List<CohortDecision> decisions = List.of(decision(studies.get(0).id(), studies.get(1).id()));
    Selector selector =
        new Selector(
            MemoryIndex.of(studies::forEach, kept.change()), kept, CohortLinks.of(decisions));
    return new DemonstrationSupplement(
        store,
        new SupplementWriter(
            new Sources(kept, decisions), EDITION, (picture, title) -> title.getBytes(UTF_8)),
        new SupplementWriter.Wish(
            "Some outcomes",
            analyses(folder, new Answers(selector::select)),
            List.of(),
            Optional.empty(),
            List.of()));
  }

  SupplementWriter.Written write(Path target) throws IOException {
    return writer.write(target, wish);
  }

  private static CohortDecision decision(String one, String two) {
    boolean inOrder = one.compareTo(two) < 0;
    return new CohortDecision(
        inOrder ? one : two,
        inOrder ? two : one,
        CohortDecision.Settled.SEPARATE,
        "other towns",
        "ann",
        Instant.parse("2031-02-03T04:05:06Z"),
        Optional.empty(),
        new TreeMap<>(),
        "x");
  }

  private static Question about(String outcome) {
    return Question.about(Outcome.of(outcome), SearchRequest.EVERYTHING);
  }

  private static List<Analysis> analyses(Path folder, Answers answers) throws IOException {
    List<Analysis> all = new ArrayList<>();
    for (String outcome : List.of("primary-union", "deep-infection", "time-to-union")) {
      Analysis.of(outcome, Asking.POOLED, answers.ask(about(outcome))).ifPresent(all::add);
    }
    Analysis.of("by size", answers.byLength(about("primary-union"), LengthShape.LINE))
        .ifPresent(all::add);
    Analysis.of("funnel", Asking.SMALL_AGAINST_LARGE, answers.funnel(about("primary-union")))
        .ifPresent(all::add);
    Path plans = Files.createDirectory(folder.resolve("plans"));
    Files.writeString(
        plans.resolve("rows.csv"), "study,events,total\nFirst,9,10\nSecond,17,20\nThird,12,15\n");
    ObjectNode plan =
        (ObjectNode)
            JsonMapper.builder()
                .build()
                .readTree("{\"measure\":\"proportion\",\"source\":{\"table\":\"rows.csv\"}}");
    all.add(Analysis.of("own", plan, answers.run(plan.toString(), Optional.of(plans)), plans));
    assertEquals(6, all.size());
    return all;
  }

  @Override
  public void close() {
    store.close();
  }
}
