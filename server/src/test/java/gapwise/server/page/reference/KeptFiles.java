package gapwise.server.page.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.server.testing.RunningServer;
import java.net.URLEncoder;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/** A server with one invented study, and files of references handed in and accepted by forms. */
public final class KeptFiles {
  static final String TITLE = "Nails for the broken forearm in growing children";
  private static final String PLACE =
      "AU  - Kell, Bo\nAU  - Ostrow, Ina\nPY  - 2001\nJO  - Imagined Bones\nVL  - 3\nSP  - 44\n"
          + "EP  - 51\n";
  static final String NOTICE =
      "TY  - JOUR\nID  - n\nTI  - Retraction: "
          + TITLE
          + "\nAU  - The editors\nPY  - 2004\nJO  - Imagined Bones\nVL  - 6\nSP  - 9\n"
          + "DO  - 10.5555/notice\n"
          + "N1  - Retraction of: Imagined Bones. 2001;3:44-51. doi: 10.5555/paper\nER  - \n";

  private KeptFiles() {}

  public static RunningServer server(Path folder) {
    Citation citation =
        Citation.with(TITLE)
            .authors("Kell, Bo; Ostrow, Ina")
            .year(2001)
            .journal("Imagined Bones")
            .volume("3")
            .pages("44-51")
            .doi("10.5555/paper")
            .build();
    Arm arm = Arm.with("A", MethodUsed.of(Method.of("autograft"))).build();
    return RunningServer.with(
        folder,
        List.of(Study.with("kell-2001", citation).invented(true).arms(List.of(arm)).build()));
  }

  public static String record(String id, String more) {
    return "TY  - JOUR\nID  - " + id + "\nTI  - " + TITLE + "\n" + PLACE + more + "ER  - \n";
  }

  /** A paper of its own, with a second record that differs by a slip. */
  public static String twice(int number) {
    String words =
        List.of("Wax", "Straw", "Copper", "Ivory", "Glass", "Willow").get(number % 6)
            + " splints for the limbs of "
            + List.of("sailors", "miners", "dancers", "foresters").get(number / 6 % 4);
    String place =
        "PY  - "
            + (1990 + number)
            + "\nJO  - Imagined Bones\nVL  - "
            + (10 + number)
            + "\nSP  - "
            + (100 + 7 * number)
            + "\n";
    return "TY  - JOUR\nID  - t"
        + number
        + "a\nTI  - "
        + words
        + "\nAU  - Brann, Odo\n"
        + place
        + "ER  - \nTY  - JOUR\nID  - t"
        + number
        + "b\nTI  - "
        + words
        + ".\nAU  - Brann, O.\n"
        + place
        + "ER  - \n";
  }

  /** Hands in one file; the address of the load once it was read. */
  static String handedIn(RunningServer running, String name, String content) throws Exception {
    String form =
        "--edge\r\nContent-Disposition: form-data; name=\"files\"; filename=\""
            + name
            + "\"\r\n\r\n"
            + content
            + "\r\n--edge--\r\n";
    HttpResponse<String> taken =
        running.send(
            running
                .request("/references")
                .header("Content-Type", "multipart/form-data; boundary=edge")
                .POST(BodyPublishers.ofString(form)));
    assertEquals(303, taken.statusCode(), taken.body());
    String address = taken.headers().firstValue("Location").orElseThrow();
    return settled(running, address.substring(address.indexOf("/references/")));
  }

  static String settled(RunningServer running, String path) throws Exception {
    while (running.get(path).body().contains("hx-get=\"/references/")) {
      Thread.onSpinWait();
    }
    return path;
  }

  public static HttpResponse<String> post(RunningServer running, String path, String... fields)
      throws Exception {
    StringBuilder body = new StringBuilder();
    for (int at = 0; at < fields.length; at += 2) {
      body.append(at == 0 ? "" : "&").append(fields[at]).append('=');
      body.append(URLEncoder.encode(fields[at + 1], StandardCharsets.UTF_8));
    }
    return running.send(
        running
            .request(path)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(BodyPublishers.ofString(body.toString())));
  }

  /** Hands in a file and accepts it. */
  public static void kept(RunningServer running, String name, String content) throws Exception {
    String path = handedIn(running, name, content);
    assertEquals(303, post(running, path + "/keep", "who", "AB", "rows", "0").statusCode());
    settled(running, path);
  }
}
