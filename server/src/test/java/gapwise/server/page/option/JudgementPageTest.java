package gapwise.server.page.option;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.RunningServer;
import java.net.URLEncoder;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a person settles of the certainty of a number, on the demonstration base. */
class JudgementPageTest {
  private static final String TABLE = "from=6&to=6&method=bone-transport";
  private static final String NUMBER =
      "/compare/judgement?" + TABLE + "&judged=bone-transport.union";
  private static final Pattern HIDDEN =
      Pattern.compile("<input type=\"hidden\" name=\"(key|version|data)\" value=\"([^\"]*)\"");

  @TempDir Path home;

  private static String form(String page, String... more) {
    List<String> fields = new ArrayList<>();
    for (MatchResult one : HIDDEN.matcher(page).results().toList()) {
      fields.add(field(one.group(1), one.group(2).replace("&amp;", "&")));
    }
    for (int i = 0; i < more.length; i += 2) {
      fields.add(field(more[i], more[i + 1]));
    }
    return String.join("&", fields);
  }

  private static String field(String name, String value) {
    return name + '=' + URLEncoder.encode(value, StandardCharsets.UTF_8);
  }

  private static int post(RunningServer server, String body) throws Exception {
    return server
        .send(
            server
                .request("/compare/judgement")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString(body)))
        .statusCode();
  }

  private static String[] judged(String bias) {
    return new String[] {
      "bias",
      bias,
      "inconsistency",
      "0",
      "indirectness",
      "0",
      "imprecision",
      "0",
      "unpublished",
      "0",
      "reason",
      "Consecutive in each paper",
      "who",
      "A. B.",
      "here",
      "/compare?" + TABLE
    };
  }

  @Test
  void aJudgementIsKeptWithNameReasonAndDateAndNeverOverwritesAnother() throws Exception {
    try (RunningServer server = RunningServer.withDemonstration(home)) {
      String page = server.get(NUMBER).body();
      assertTrue(page.contains("How certain is this number?"), page);
      String body = form(page, judged("1"));
      assertEquals(303, post(server, body));
      String after = server.get(NUMBER).body();
      assertTrue(after.contains("Settled by A. B. on "), after);
      assertTrue(after.contains("Consecutive in each paper"), after);
      assertTrue(server.get("/compare/table?" + TABLE).body().contains("settled"), after);
      // The same form once more stands for somebody who did not see the first judgement.
      assertEquals(409, post(server, body));
      assertEquals(303, post(server, form(after, judged("0"))));
    }
  }

  @Test
  void whatIsMissingOrWrongIsNamedAndNothingKept() throws Exception {
    try (RunningServer server = RunningServer.withDemonstration(home)) {
      String page = server.get(NUMBER).body();
      assertEquals(422, post(server, form(page, "bias", "9")));
      assertEquals(422, post(server, "key=none"));
      assertTrue(!server.get(NUMBER).body().contains("Settled by"));
      assertEquals(404, server.get("/compare/judgement?" + TABLE).statusCode());
      assertEquals(
          404,
          server
              .get("/compare/judgement?" + TABLE + "&judged=primary-amputation.union")
              .statusCode());
    }
  }
}
