package gapwise.server.page.extraction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.account.Role;
import gapwise.server.testing.RunningServer;
import gapwise.server.testing.Team;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** With accounts, who extracts is whoever has signed in, whatever name is sent. */
@Timeout(120)
class ExtractionByAccountTest {
  private static final String PAPER = "/extraction/mallow-2031";

  @TempDir Path folder;

  @Test
  void aFormIsOpenedByItsPersonAloneWhateverNameAnotherSends() throws Exception {
    try (RunningServer running = RunningServer.empty(folder)) {
      Team team = new Team(running);
      String eddo = team.session(team.of(Role.EXTRACTOR));
      String ines = team.session(team.add("Ines", Role.EXTRACTOR));
      String adele = team.session(team.of(Role.ADJUDICATOR));
      HttpResponse<String> opened =
          team.post(
              "/extraction",
              adele,
              "study",
              "mallow-2031",
              "first",
              "Eddo",
              "second",
              "Ines",
              "settler",
              "Adele");
      assertEquals(303, opened.statusCode(), opened.body());
      String form = location(team.post(PAPER + "/draft", eddo, "who", "Ines"));
      assertTrue(form.startsWith("/desk/"), form);
      assertEquals(200, team.get(form, eddo).statusCode());
      assertEquals(200, team.get(form + "?who=Ines", eddo).statusCode());
      String encoded = form.replaceFirst("/desk/.", encodedFirst(form));
      assertEquals(
          200, team.get(encoded, eddo).statusCode(), "the same address, written otherwise");
      for (String address :
          new String[] {form, form + "?who=Eddo", form + "/hand-in?who=Eddo", encoded}) {
        assertEquals(404, team.get(address, ines).statusCode(), address);
        assertEquals(404, team.get(address, adele).statusCode(), address);
        assertEquals(401, running.get(address).statusCode(), address);
      }
      String id = form.replace("/desk/", "");
      assertTrue(!team.get("/review?who=Eddo", ines).body().contains(id), "listed nowhere");
      assertTrue(team.get("/review", eddo).body().contains(PAPER), "his own paper waits for him");
      String other = location(team.post(PAPER + "/draft", ines, "who", "Eddo"));
      assertTrue(!other.equals(form), "a form of her own");
      assertEquals(403, team.post(PAPER + "/draft", adele).statusCode());
      assertEquals(403, team.post(PAPER + "/begin", ines).statusCode(), "settling is another role");
      assertEquals(409, team.post(PAPER + "/begin", adele).statusCode(), "neither has handed in");
      assertEquals(403, team.get(PAPER + "/settle?who=Adele", ines).statusCode());
    }
  }

  /** The way to a form whose first digit is written as a percent and its code. */
  private static String encodedFirst(String form) {
    return "/desk/%" + Integer.toHexString(form.charAt("/desk/".length()));
  }

  private static String location(HttpResponse<String> answer) {
    assertEquals(303, answer.statusCode(), answer.body());
    return answer.headers().firstValue("Location").orElseThrow().split("\\?", -1)[0];
  }
}
