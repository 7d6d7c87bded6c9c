package gapwise.server.page.map;

import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.KeptApart;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.Study;
import gapwise.evidence.StudyBuilder;
import gapwise.evidence.vocabulary.ApartReason;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.server.testing.RunningServer;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Maps count what can be pooled; the studies are invented. */
class KeptApartMapTest {
  @TempDir Path folder;

  private static Arm arm(String id, String method, Optional<KeptApart> apart) {
    Arm.Builder arm =
        Arm.with(id, MethodUsed.of(Method.of(method)))
            .baseline(Baseline.with().patients(10).build());
    apart.ifPresent(arm::keptApart);
    return arm.build();
  }

  private static StudyBuilder study(String id, Arm... arms) {
    return Study.with(id, Citation.with("Invented " + id).firstAuthor(id).year(2020).build())
        .invented(true)
        .arms(List.of(arms));
  }

  @Test
  void groupsThatAreNeverPooledStandInNoPlaceAndNoPair() throws Exception {
    KeptApart failed = new KeptApart(ApartReason.SELECTED_ON_OUTCOME, Optional.empty());
    List<Study> studies =
        List.of(
            study(
                    "both",
                    arm("A", "bone-transport", Optional.empty()),
                    arm("B", "induced-membrane", Optional.of(failed)))
                .build(),
            study(
                    "withdrawn",
                    arm("A", "bone-transport", Optional.empty()),
                    arm("B", "allograft", Optional.empty()))
                .reportKind(ReportKind.RETRACTION)
                .build());
    String apart =
        "3 further groups are kept apart, never pooled and not counted here: 1 chosen by what"
            + " became of them, 2 retracted.";
    try (RunningServer running = RunningServer.with(folder.resolve("home"), studies)) {
      String map = running.get("/map").body();
      assertTrue(map.contains(apart), map);
      assertTrue(map.contains("the rest hold 1 study with 10 patients"), map);
      String pairs = running.get("/map?view=comparisons").body();
      assertTrue(
          pairs.contains("No study here treats groups of patients by two methods. " + apart),
          pairs);
      String csv = running.get("/map.csv").body();
      assertTrue(csv.contains("all,all,,,1,1,10,"), csv);
    }
  }
}
