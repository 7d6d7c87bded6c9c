package gapwise.server.page.extraction;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.server.page.reference.KeptFiles;
import gapwise.server.testing.RunningServer;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Two invented people who extract an invented paper by forms alone. */
public final class TwoReaders {
  public static final String STUDY = "marl-2031";
  public static final String PAPER = "/extraction/" + STUDY;

  private TwoReaders() {}

  public static HttpResponse<String> post(RunningServer running, String path, String... fields)
      throws Exception {
    return KeptFiles.post(running, path, fields);
  }

  public static void open(RunningServer running) throws Exception {
    HttpResponse<String> answer =
        post(
            running,
            "/extraction",
            "study",
            STUDY,
            "title",
            "Pegs of the moon",
            "first",
            "AB",
            "second",
            "CD",
            "settler",
            "",
            "who",
            "EF");
    assertEquals(303, answer.statusCode(), answer.body());
  }

  /** Address of a person's own form. */
  public static String form(RunningServer running, String who) throws Exception {
    HttpResponse<String> answer = post(running, PAPER + "/draft", "who", who);
    assertEquals(303, answer.statusCode(), answer.body());
    return answer.headers().firstValue("location").orElseThrow().replaceFirst("\\?.*", "");
  }

  /** Fills a form: the paper, its one group, and how often bones united; then hands it in. */
  public static void extract(RunningServer running, String who, Map<String, String> other)
      throws Exception {
    String form = form(running, who);
    assertEquals(303, post(running, form + "/outcome", "outcome", "union").statusCode());
    Map<String, String> cells = new TreeMap<>();
    cells.put("c.1.title", "Pegs of the moon for missing shin bone");
    cells.put("c.1.first_author", "Marl");
    cells.put("c.1.year", "2031");
    cells.put("c.1.invented", "yes");
    cells.put("c.1.union_definition", "three cortices bridged");
    cells.put("c.2.method", "autograft");
    cells.put("c.2.patients", "12");
    cells.put("c.2.bones", "tibia");
    cells.put("c.3.events", "9");
    cells.put("c.3.total", "12");
    cells.put("c.3.unit_counted", "patients");
    cells.putAll(other);
    List<String> fields = new ArrayList<>();
    cells.forEach((name, text) -> fields.addAll(List.of(name, text)));
    assertEquals(303, post(running, form, fields.toArray(String[]::new)).statusCode());
    HttpResponse<String> handed = handIn(running, form, who);
    assertEquals(303, handed.statusCode(), plain(handed.body()));
  }

  public static HttpResponse<String> handIn(RunningServer running, String form, String who)
      throws Exception {
    return post(running, form + "/hand-in", "who", who, "why", "extracted");
  }

  public static void begin(RunningServer running, String who) throws Exception {
    HttpResponse<String> answer = post(running, PAPER + "/begin", "who", who);
    assertEquals(303, answer.statusCode(), plain(answer.body()));
  }

  public static HttpResponse<String> settle(
      RunningServer running, String who, String difference, String take, String value, String why)
      throws Exception {
    return post(
        running,
        PAPER + "/settle",
        "who",
        who,
        "difference",
        difference,
        "seen",
        "0",
        "take",
        take,
        "value",
        value,
        "why",
        why);
  }

  public static String plain(String page) {
    return page.replaceAll("(?s)<(script|style).*?</\\1>", " ")
        .replaceAll("<[^>]+>", " ")
        .replaceAll("\\s+", " ");
  }
}
