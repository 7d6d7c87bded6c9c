package gapwise.figure;

import gapwise.answer.DemonstrationFigures;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Draws every figure in every medium into a folder with one page of all of them, to be looked at
 * whole: {@code index.html} in colour, {@code grey.html} as a printer without colour gives it.
 * DEVELOPERS.md has the command.
 */
public final class ContactSheet {
  private static final int HEIGHT = 420;

  private ContactSheet() {}

  /**
   * Draws them.
   *
   * @param arguments the folder, and words of which a figure's name must hold one; all without
   */
  public static void main(String[] arguments) throws IOException {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    Map<String, Figure> figures = new LinkedHashMap<>(FiguresThatHurt.byName());
    DemonstrationFigures.byName(Files.createTempDirectory("figures"))
        .forEach((name, figure) -> figures.put("demonstration: " + name, figure));
    List<String> wanted = List.of(arguments).subList(1, arguments.length);
    StringBuilder body = new StringBuilder();
    for (Map.Entry<String, Figure> figure : figures.entrySet()) {
      if (wanted.isEmpty() || wanted.stream().anyMatch(figure.getKey()::contains)) {
        add(folder, figure.getKey(), figure.getValue(), body);
      }
    }
    Files.writeString(folder.resolve("index.html"), page("", body));
    Files.writeString(folder.resolve("grey.html"), page("img{filter:grayscale(1)}", body));
  }

  private static void add(Path folder, String name, Figure figure, StringBuilder body)
      throws IOException {
    body.append("<h2>").append(name).append("</h2>\n");
    List<Setting> settings =
        Stream.concat(
                Stream.of(Medium.values()).map(Setting::alone),
                Stream.of(Medium.PAGE, Medium.PHONE).map(Setting::withinPage))
            .toList();
    for (Setting setting : settings) {
      String use = setting.medium().code() + (setting.withinPage() ? "-within" : "");
      int sheet = 0;
      body.append("<figure>");
      for (Picture picture : figure.draw(setting)) {
        String file = name.replaceAll("[^a-z0-9]+", "-") + "-" + use + "-" + ++sheet;
        Files.writeString(folder.resolve(file + ".svg"), picture.svg(), StandardCharsets.UTF_8);
        body.append(
            String.format(
                Locale.ROOT,
                "<a href=\"%1$s.svg\"><img src=\"%1$s.svg\" height=\"%2$d\" alt=\"\"></a>%n",
                file,
                HEIGHT));
      }
      body.append("<figcaption>").append(use).append("</figcaption></figure>\n");
    }
  }

  private static String page(String style, StringBuilder body) {
    return "<!doctype html><meta charset=\"utf-8\"><title>Figures</title>"
        + "<style>body{font:14px sans-serif;background:#777;color:#fff;margin:12px}"
        + "figure{display:inline-block;margin:6px;vertical-align:top}img{margin-right:6px}"
        + style
        + "</style>\n"
        + body;
  }
}
