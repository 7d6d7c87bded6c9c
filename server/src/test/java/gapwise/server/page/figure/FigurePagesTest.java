package gapwise.server.page.figure;

import static gapwise.server.page.figure.FigureForms.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.page.desk.InventedPaper;
import gapwise.server.testing.RunningServer;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A figure of an invented paper read off by forms alone. */
class FigurePagesTest {
  @TempDir static Path folder;
  private static RunningServer running;
  private static FigureForms forms;
  private static byte[] paper;

  @BeforeAll
  static void open() throws Exception {
    running = RunningServer.withStudies(folder.resolve("home"));
    forms = new FigureForms(running);
    paper = Files.readAllBytes(InventedPaper.write(folder.resolve("invented.pdf")));
  }

  @AfterAll
  static void close() {
    running.close();
  }

  private static String draft(String study) throws IOException, InterruptedException {
    String draft = forms.begin(study);
    assertEquals(303, forms.upload(draft + "/paper", "paper", "invented.pdf", paper).statusCode());
    return draft;
  }

  private static String told(Map<String, String> fields, String draft)
      throws IOException, InterruptedException {
    HttpResponse<String> page = forms.post(draft + "/figure", fields);
    assertEquals(200, page.statusCode(), page.body());
    return page.body().replace("&#39;", "'");
  }

  @Test
  void aCurveIsLookedAtThenTakenThenMendedInItsPlace() throws IOException, InterruptedException {
    String draft = draft("figure2031");
    HttpResponse<String> looked = forms.post(draft + "/figure", FigureForms.ofTheInventedPaper());
    assertTrue(
        looked.body().contains("It has the 10 events that the paper prints."), looked.body());
    assertTrue(looked.body().contains("Its median is 9, and the paper prints 9."));
    assertTrue(looked.body().contains("everywhere less than 0.1"), looked.body());
    assertTrue(looked.body().contains("That is right only where no other event"), looked.body());
    assertTrue(looked.body().contains("<polyline points=\"120.0,421.89"), "the rebuilt curve");
    assertFalse(running.get(draft).body().contains("figure?curve="), "nothing is taken yet");

    Map<String, String> taking =
        with(FigureForms.ofTheInventedPaper(), "looked", FigureForms.looked(looked));
    HttpResponse<String> taken = forms.post(draft + "/figure/take", taking);
    assertEquals(303, taken.statusCode(), taken.body());
    String page = running.get(draft).body();
    assertTrue(page.contains("A: Time to union"), page);
    String mend = page.replaceFirst("(?s).*href=\"([^\"]*figure\\?curve=\\d+)\".*", "$1");
    String block = mend.replaceFirst(".*=", "");

    String again = running.get(mend).body();
    assertTrue(again.contains("6.5 25"), again);
    assertTrue(again.contains("value=\"24\""), again);
    String beside = running.get(mend.replace("curve=", "beside=")).body();
    assertTrue(beside.contains("value=\"24\""), "its axes stand already");
    assertFalse(beside.contains("6.5 25"), "its points are not those of the other");
    Map<String, String> mended =
        with(with(FigureForms.ofTheInventedPaper(), "block", block), "median", "9.5");
    HttpResponse<String> lookedAgain = forms.post(draft + "/figure", mended);
    assertEquals(
        303,
        forms
            .post(draft + "/figure/take", with(mended, "looked", FigureForms.looked(lookedAgain)))
            .statusCode());
    assertEquals(2, running.get(draft).body().split("figure\\?curve=").length, "one, not two");

    String place = page.replaceFirst("(?s).*href=\"(/papers/[^\"]*\\?at=[^\"]*)\".*", "$1");
    HttpResponse<String> marked = running.get(place);
    assertEquals(200, marked.statusCode());
    assertTrue(marked.body().contains("class=\"marked\""), marked.body());
  }

  @Test
  void whatThePageHoldsAsLinesIsTakenWithOneAction() throws IOException, InterruptedException {
    String draft = draft("offered2031");
    String page = running.get(draft + "/figure?page=3").body();
    assertTrue(page.contains("with a curve of 12 corners"), page);
    String taken = told(Map.of("page", "3", "propose", "0.c0", "arm", "A"), draft);
    assertTrue(taken.contains("Confirm them."), taken);
    assertTrue(taken.contains("6.5 25"), taken);
    assertTrue(taken.contains("18 2"), taken);
    assertEquals(
        404, forms.post(draft + "/figure", Map.of("page", "3", "propose", "7.c1")).statusCode());
  }

  @Test
  void aLinePointedAtIsFollowed() throws IOException, InterruptedException {
    String draft = draft("followed2031");
    String followed =
        told(with(FigureForms.ofTheInventedPaper(), "follow", FigureForms.at(20, 83.3333)), draft);
    assertTrue(followed.contains("set along the line that you pointed at"), followed);
    String nothing =
        told(with(FigureForms.ofTheInventedPaper(), "follow", FigureForms.at(20, 20)), draft);
    assertTrue(nothing.contains("No line was found there."), nothing);
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "follow", "here"), draft)
            .contains("Point at the line"));
  }

  @Test
  void nothingIsTakenThatWasNotLookedAt() throws IOException, InterruptedException {
    String draft = draft("unseen2031");
    HttpResponse<String> unseen =
        forms.post(draft + "/figure/take", FigureForms.ofTheInventedPaper());
    assertEquals(422, unseen.statusCode());
    assertTrue(unseen.body().contains("so nothing was taken"), unseen.body());
    String looked =
        FigureForms.looked(forms.post(draft + "/figure", FigureForms.ofTheInventedPaper()));
    Map<String, String> changed =
        with(with(FigureForms.ofTheInventedPaper(), "events", "9"), "looked", looked);
    assertEquals(422, forms.post(draft + "/figure/take", changed).statusCode());
    assertFalse(running.get(draft).body().contains("figure?curve="));
  }

  @Test
  void aGroupHasOneCurveOfAnOutcome() throws IOException, InterruptedException {
    String draft = draft("twice2031");
    String looked =
        FigureForms.looked(forms.post(draft + "/figure", FigureForms.ofTheInventedPaper()));
    forms.post(draft + "/figure/take", with(FigureForms.ofTheInventedPaper(), "looked", looked));
    assertTrue(
        told(FigureForms.ofTheInventedPaper(), draft)
            .contains("Mend that one, or take it out first."));
    assertEquals(
        422,
        forms
            .post(draft + "/figure/take", with(FigureForms.ofTheInventedPaper(), "looked", looked))
            .statusCode());
  }

  @Test
  void whatIsWrongWithTheMarksIsSaidInWords() throws IOException, InterruptedException {
    String draft = draft("wrong2031");
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "x2-at", FigureForms.at(0, 0)), draft)
            .contains("The axis across: The two marks of the axis are nearly at one place."));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "y2-value", "0"), draft)
            .contains("Both marks of the axis have the value"));
    assertTrue(
        told(
                with(
                    with(FigureForms.ofTheInventedPaper(), "y1-at", FigureForms.at(0, 0)),
                    "y2-at",
                    FigureForms.at(24, 0)),
                draft)
            .contains("The two axes run nearly the same way."));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "x-scale", "log"), draft)
            .contains("A logarithmic axis has only values above 0"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "x1-at", "9000 9000"), draft)
            .contains("the first mark lies outside the picture"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "x1-at", ""), draft)
            .contains("has no first mark"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "x1-value", "x"), draft)
            .contains("has no number at its first"));
    String log =
        told(
            with(
                with(with(FigureForms.ofTheInventedPaper(), "x-scale", "log"), "x1-value", "1"),
                "points",
                "0 5"),
            draft);
    assertTrue(log.contains("has no place on a logarithmic axis"), log);
  }

  @Test
  void whatIsWrongWithThePointsIsSaidInWords() throws IOException, InterruptedException {
    String draft = draft("points2031");
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "points", ""), draft)
            .contains("No points are set."));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "points", "1 2\nten twenty"), draft)
            .contains("Line 2 says “ten twenty”"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "points", "0 0\n900 50"), draft)
            .contains("Point 2 (900, 50) lies outside the picture."));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "points", "0 0\n5 150"), draft)
            .contains("lies between 0 and 100"),
        told(with(FigureForms.ofTheInventedPaper(), "points", "0 0\n5 150"), draft));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "points", "5 50"), draft)
            .contains("at least two points"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "shows", "without-event"), draft)
            .contains("Choose the share with it, or set the points again."));
    String many =
        IntStream.range(0, 2_000)
            .mapToObj(at -> at / 100.0 + " " + at / 100.0)
            .collect(Collectors.joining("\n"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "points", many), draft)
            .contains("Found 2,000 entries, and at most 1,000 are taken."));
  }

  @Test
  void whatIsWrongWithPrintedNumbersIsSaidInWords() throws IOException, InterruptedException {
    String draft = draft("printed2031");
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "patients", ""), draft)
            .contains("Give the number of patients"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "patients", "0"), draft)
            .contains("number of patients"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "patients", "999999"), draft)
            .contains("from 1 to 20,000"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "patients", "twelve"), draft)
            .contains("Found “twelve”"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "events", "13"), draft)
            .contains("more events than patients"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "median", "-1"), draft)
            .contains("cannot be below 0"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "risk", "0 12\n6 13"), draft)
            .contains("it can only fall"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "risk", "0 11"), draft)
            .contains("but there are 12 patients"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "risk", "0 11.5"), draft)
            .contains("is a whole number"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "strokes", "3 x"), draft)
            .contains("the time of a stroke"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "arm", "Z"), draft)
            .contains("Choose the group"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "outcome", "union"), draft)
            .contains("Choose the time"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "unit", "cm"), draft)
            .contains("Choose the unit of time"));
    assertTrue(
        told(with(FigureForms.ofTheInventedPaper(), "median", "3"), draft)
            .contains("That differs, so check the axis"));
  }

  @Test
  void aScatterBecomesPatientsOnlyWhenItIsAccepted() throws IOException, InterruptedException {
    String draft = draft("scatter2031");
    Map<String, String> scatter =
        with(with(FigureForms.ofTheInventedPaper(), "kind", "scatter"), "points", "6 40\n12 75");
    String unset = told(scatter, draft);
    assertTrue(unset.contains("Choose what each axis stands for."), unset);
    Map<String, String> equal = with(with(scatter, "across", "age"), "up", "age");
    assertTrue(told(equal, draft).contains("Both axes stand for the same."));
    Map<String, String> whole = with(with(scatter, "across", "time_to_union|months"), "up", "age");
    HttpResponse<String> looked = forms.post(draft + "/figure", whole);
    assertTrue(looked.body().contains("point 2"), looked.body());
    assertFalse(running.get(draft).body().contains("point 2"));
    assertEquals(
        303,
        forms
            .post(draft + "/figure/take", with(whole, "looked", FigureForms.looked(looked)))
            .statusCode());
    String page = running.get(draft).body();
    assertTrue(page.contains("value=\"point 2\""), page);
    assertTrue(page.contains("value=\"75\""), page);
  }

  /** Values that break what is not looked at: nothing, far too much, the other kind, the edge. */
  private static final List<String> ODD =
      List.of(
          "",
          "0",
          "-1",
          "0.000001",
          "999999999",
          "NaN",
          "1e9",
          "0 0",
          "0 50\n0 50",
          "5 100\n5 0",
          "0 100\n0 0",
          "24 0\n0 100",
          "1 2 3",
          "120 421.89",
          "595 841",
          "log",
          "scatter",
          "A",
          "\u0000",
          "<b>",
          "9".repeat(50),
          "0 12\n6 12\n12 0",
          "3 3 3 3",
          "time_to_union|weeks");

  @Test
  void oddFieldsAreAnsweredInWordsAndNeverByAFault() throws IOException, InterruptedException {
    String draft = draft("odd2031");
    Random random = new Random(11);
    List<String> names = List.copyOf(FigureForms.ofTheInventedPaper().keySet());
    for (int turn = 0; turn < 150; turn++) {
      Map<String, String> fields =
          with(with(FigureForms.ofTheInventedPaper(), "across", "age"), "strokes", "");
      for (int change = 0; change <= random.nextInt(4); change++) {
        String name = random.nextInt(8) == 0 ? "strokes" : names.get(random.nextInt(names.size()));
        fields = with(fields, name, ODD.get(random.nextInt(ODD.size())));
      }
      HttpResponse<String> looked = forms.post(draft + "/figure", fields);
      assertTrue(looked.statusCode() < 500, fields + " gave " + looked.statusCode());
      Map<String, String> taking = with(fields, "looked", FigureForms.looked(looked));
      int taken = forms.post(draft + "/figure/take", taking).statusCode();
      assertTrue(taken < 500, fields + " taken gave " + taken);
    }
    assertEquals(200, running.get(draft).statusCode());
  }

  @Test
  void thePageKeepsTheStrictPolicyOfAllPages() throws IOException, InterruptedException {
    HttpResponse<String> page = running.get(draft("policy2031") + "/figure?page=3");
    String policy = page.headers().firstValue("Content-Security-Policy").orElseThrow();
    assertTrue(policy.contains("default-src 'none'") && !policy.contains("unsafe"), policy);
    assertFalse(page.body().matches("(?s).*\\sstyle=\".*"), "no inline style");
    assertFalse(page.body().matches("(?s).*<script>.*"), "no inline script");
  }

  @Test
  void draftsPagesAndPapersThatAreNotThereAreSaidToBeSo() throws IOException, InterruptedException {
    assertEquals(404, running.get("/desk/0123456789ab/figure?page=3").statusCode());
    assertEquals(
        404,
        forms
            .post("/desk/0123456789ab/figure/take", FigureForms.ofTheInventedPaper())
            .statusCode());
    String without = forms.begin("without2031");
    assertEquals(404, running.get(without + "/figure").statusCode());
    assertEquals(404, running.get(without + "/figure?page=3").statusCode());
    String draft = draft("pages2031");
    assertEquals(404, running.get(draft + "/figure?page=99").statusCode());
    assertEquals(404, running.get(draft + "/figure?page=minus").statusCode());
    assertEquals(404, running.get(draft + "/figure?curve=4711").statusCode());
    assertEquals(404, running.get(draft + "/figure?image=../../etc/passwd").statusCode());
    // The paper of another draft is not this one's, whoever names it.
    String name =
        running.get(draft).body().replaceFirst("(?s).*/papers/([0-9a-f]{32})/pages.*", "$1");
    HttpResponse<String> other = running.get(without + "/figure?page=3&paper=" + name);
    assertEquals(404, other.statusCode());
    assertTrue(other.body().contains("not of the paper that lies beside this draft"), other.body());
  }
}
