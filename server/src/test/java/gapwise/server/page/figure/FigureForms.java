package gapwise.server.page.figure;

import gapwise.server.page.desk.InventedFigure;
import gapwise.server.page.desk.InventedPaper;
import gapwise.server.testing.RunningServer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The page of a figure by its forms alone, as a browser without script sends them. */
public final class FigureForms {
  private static final Pattern LOOKED = Pattern.compile("name=\"looked\" value=\"([^\"]*)\"");

  private final RunningServer running;

  FigureForms(RunningServer running) {
    this.running = running;
  }

  HttpResponse<String> post(String path, Map<String, String> fields)
      throws IOException, InterruptedException {
    StringBuilder body = new StringBuilder();
    fields.forEach(
        (name, text) ->
            body.append(body.length() == 0 ? "" : "&")
                .append(URLEncoder.encode(name, StandardCharsets.UTF_8))
                .append('=')
                .append(URLEncoder.encode(text, StandardCharsets.UTF_8)));
    return running.send(
        running
            .request(path)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body.toString())));
  }

  /** Hands one file in. */
  HttpResponse<String> upload(String path, String field, String name, byte[] content)
      throws IOException, InterruptedException {
    String boundary = "----figure";
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    body.write(
        ("--"
                + boundary
                + "\r\nContent-Disposition: form-data; name=\""
                + field
                + "\"; filename=\""
                + name
                + "\"\r\nContent-Type: application/octet-stream\r\n\r\n")
            .getBytes(StandardCharsets.US_ASCII));
    body.write(content);
    body.write(("\r\n--" + boundary + "--\r\n").getBytes(StandardCharsets.US_ASCII));
    return running.send(
        running
            .request(path)
            .header("Content-Type", "multipart/form-data; boundary=" + boundary)
            .POST(HttpRequest.BodyPublishers.ofByteArray(body.toByteArray())));
  }

  /** Begins a draft; gives its address. */
  String begin(String study) throws IOException, InterruptedException {
    return post("/desk", Map.of("study", study)).headers().firstValue("Location").orElseThrow();
  }

  /** What was looked at, as the page names it. */
  static String looked(HttpResponse<String> page) {
    Matcher looked = LOOKED.matcher(page.body());
    return looked.find() ? looked.group(1) : "";
  }

  /** Fields with one changed. */
  static Map<String, String> with(Map<String, String> fields, String name, String text) {
    Map<String, String> changed = new TreeMap<>(fields);
    changed.put(name, text);
    return changed;
  }

  /** A place of the figure of the invented paper, as the form has it. */
  public static String at(double month, double percent) {
    double[] place = InventedFigure.place(month, percent);
    return String.format(Locale.ROOT, "%.2f %.2f", place[0], place[1]);
  }

  /** The figure of the invented paper, as somebody types it. */
  public static Map<String, String> ofTheInventedPaper() {
    Map<String, String> fields = new TreeMap<>();
    fields.put("page", "3");
    fields.put("kind", "curve");
    fields.put("x1-at", at(0, 0));
    fields.put("x1-value", "0");
    fields.put("x2-at", at(24, 0));
    fields.put("x2-value", "24");
    fields.put("y1-at", at(0, 0));
    fields.put("y1-value", "0");
    fields.put("y2-at", at(0, 100));
    fields.put("y2-value", "100");
    fields.put("x-scale", "linear");
    fields.put("y-scale", "percent");
    StringBuilder points = new StringBuilder("0 0\n");
    for (int at = 0; at < InventedFigure.UNITED.size(); at++) {
      points.append(InventedFigure.UNITED.get(at)).append(' ');
      points.append(100.0 * (at + 1) / InventedPaper.PATIENTS).append('\n');
    }
    fields.put("points", points + "24 83.3333");
    fields.put("arm", "A");
    fields.put("outcome", "time-to-union");
    fields.put("unit", "months");
    fields.put("shows", "with-event");
    fields.put("patients", "12");
    fields.put("events", "10");
    fields.put("median", "9");
    fields.put("risk", "0 12\n6 11\n12 4\n18 2");
    return fields;
  }
}
