package gapwise.server.testing.filled;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.Forms;
import gapwise.server.testing.RunningServer;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A server while its pages are filled, and the states they have come to. */
final class Filling {
  private final RunningServer running;
  private final Path folder;
  private final Forms forms;
  private final List<FilledState> states = new ArrayList<>();

  Filling(RunningServer running, Path folder) {
    this.running = running;
    this.folder = folder;
    this.forms = new Forms(running);
  }

  RunningServer running() {
    return running;
  }

  /** Where files of the builders lie. */
  Path folder() {
    return folder;
  }

  List<FilledState> states() {
    return List.copyOf(states);
  }

  void shows(String name, String path) throws IOException, InterruptedException {
    assertEquals(200, running.get(path).statusCode(), name);
    states.add(FilledState.of(name, running.address(path)));
  }

  void shows(String name, String path, String session) {
    states.add(new FilledState(name, running.address(path), Optional.of(session)));
  }

  /** Sends a form that is accepted; gives the address that it leads to. */
  String post(String path, String... fields) throws IOException, InterruptedException {
    return led(forms.post(path, fields));
  }

  /** Sends a form that is answered at once. */
  String asked(String path, String... fields) throws IOException, InterruptedException {
    HttpResponse<String> answer = forms.post(path, fields);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  /** Hands in a file that is accepted; gives the address that it leads to. */
  String upload(String path, String field, String name, byte[] content)
      throws IOException, InterruptedException {
    return led(forms.upload(path, field, name, content, "AB"));
  }

  String upload(String path, String field, String name, String content)
      throws IOException, InterruptedException {
    return upload(path, field, name, content.getBytes(StandardCharsets.UTF_8));
  }

  static String led(HttpResponse<String> answer) {
    assertEquals(303, answer.statusCode(), answer.body());
    return answer.headers().firstValue("Location").orElseThrow().replaceFirst("https?://[^/]*", "");
  }

  /** What a page says once it asks for no more by itself. */
  String settled(String path) throws IOException, InterruptedException {
    String page = running.get(path).body();
    while (page.contains("hx-get=\"" + path.replaceFirst("\\?.*", ""))) {
      page = running.get(path).body();
    }
    return page;
  }

  /** The first group of a pattern in a page. */
  String found(String pattern, String path) throws IOException, InterruptedException {
    return foundIn(pattern, running.get(path).body());
  }

  static String foundIn(String pattern, String page) {
    Matcher matcher = Pattern.compile(pattern).matcher(page);
    assertTrue(matcher.find(), pattern + " in " + page);
    return matcher.group(1).replace("&amp;", "&");
  }

  /** Each first group of a pattern in a page. */
  static List<String> allIn(String pattern, String page) {
    return Pattern.compile(pattern)
        .matcher(page)
        .results()
        .map(one -> one.group(1).replace("&amp;", "&"))
        .toList();
  }
}
