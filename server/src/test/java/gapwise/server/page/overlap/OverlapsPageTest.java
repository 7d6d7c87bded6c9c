package gapwise.server.page.overlap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.server.testing.RunningServer;
import java.io.IOException;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One invented paper under two ids: asked about, settled, and counted once. */
class OverlapsPageTest {
  private static final Pattern STOOD_ON = Pattern.compile("name=\"stood-on\" value=\"([^\"]+)\"");

  @TempDir Path folder;

  private static Study study(String id, String title) {
    Citation citation =
        Citation.with(title)
            .authors("Placeholder A; Standin B")
            .firstAuthor("Placeholder")
            .year(2031)
            .journal("Invented Annals of Bone")
            .volume("4")
            .pages("11-19")
            .build();
    Arm arm =
        Arm.with(
                "A",
                new MethodUsed(
                    Method.vocabulary().get("bone-transport"), List.of(), Optional.empty()))
            .baseline(Baseline.with().patients(23).limbs(23).build())
            .build();
    OutcomeReport union =
        OutcomeReport.with(
                new Scope.OneArm("A"),
                Outcome.vocabulary().get("primary-union"),
                new ReportedValue.Events(EventCount.of(19, 23)))
            .build();
    return Study.with(id, citation)
        .invented(true)
        .arms(List.of(arm))
        .outcomes(List.of(union))
        .build();
  }

  private static HttpResponse<String> settle(RunningServer running, String... fields)
      throws IOException, InterruptedException {
    StringBuilder body = new StringBuilder();
    for (int at = 0; at < fields.length; at += 2) {
      body.append(at == 0 ? "" : "&").append(fields[at]).append('=');
      body.append(URLEncoder.encode(fields[at + 1], StandardCharsets.UTF_8));
    }
    return running.send(
        running
            .request("/overlaps")
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body.toString())));
  }

  @Test
  void onePaperUnderTwoIdsIsAskedAboutSettledAndCountedOnce()
      throws IOException, InterruptedException {
    List<Study> twice =
        List.of(
            study("first2031", "Transport over invented gaps of the tibia"),
            study("second2031", "Transport over invented gaps of the tibia."));
    try (RunningServer running = RunningServer.with(folder, twice)) {
      String before = running.get("/pooled?outcome=primary-union").body();
      assertTrue(before.contains("38 of 46"), "both count while nobody has settled it");
      String page = running.get("/overlaps").body();
      assertTrue(page.contains("They look like one paper"), page);
      Matcher stoodOn = STOOD_ON.matcher(page);
      assertTrue(stoodOn.find());

      assertEquals(
          422,
          settle(
                  running,
                  "first",
                  "first2031",
                  "second",
                  "second2031",
                  "stood-on",
                  stoodOn.group(1))
              .statusCode());
      assertEquals(409, settle(running, "first", "first2031", "second", "nobody").statusCode());
      assertEquals(
          303,
          settle(
                  running,
                  "first",
                  "first2031",
                  "second",
                  "second2031",
                  "stood-on",
                  stoodOn.group(1),
                  "settled",
                  "same",
                  "counted",
                  "first",
                  "who",
                  "AB",
                  "why",
                  "the same page of one journal")
              .statusCode());

      String after = running.get("/overlaps").body();
      assertFalse(after.contains("They look like one paper"));
      assertTrue(after.contains("the same page of one journal"));
      String pooled = running.get("/pooled?outcome=primary-union").body();
      assertTrue(pooled.contains("19 of 23"), "one of the two counts");
      assertFalse(pooled.contains("38 of 46"));
    }
  }
}
