package gapwise.server.page;

import gapwise.server.account.Right;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Style and script of the pages, read once from the jar. Their addresses carry a hash of their
 * content, so that browsers keep them until they change.
 */
public final class Assets {
  /** Unpacked at build without its version, which the project description alone names. */
  private static final String SCRIPT_LIBRARY =
      "/META-INF/resources/webjars/htmx.org/dist/htmx.min.js";

  private static final int DIGITS_OF_HASH = 12;

  private final Asset style = Asset.read("gapwise.css", "text/css");
  private final Asset script = Asset.read("gapwise.js", "text/javascript");
  private final Asset sheet = Asset.read("sheet.css", "text/css");
  private final Asset desk = Asset.read("desk.js", "text/javascript");
  private final Asset pairs = Asset.read("pairs.js", "text/javascript");
  private final Asset screening = Asset.read("screening.js", "text/javascript");
  private final Asset deskStyle = Asset.read("desk.css", "text/css");
  private final Asset figure = Asset.read("figure.js", "text/javascript");
  private final Asset figureStyle = Asset.read("figure.css", "text/css");
  private final Asset library = Asset.read(SCRIPT_LIBRARY, "text/javascript");
  private final Asset icon = Asset.read("icon.svg", "image/svg+xml");

  private record Asset(byte[] content, String type, String hash) {
    static Asset read(String name, String type) {
      String path = name.startsWith("/") ? name : "/gapwise/server/assets/" + name;
      try (InputStream stream = Assets.class.getResourceAsStream(path)) {
        if (stream == null) {
          throw new IllegalStateException("missing resource " + path);
        }
        byte[] content = stream.readAllBytes();
        byte[] hash = MessageDigest.getInstance("SHA-256").digest(content);
        return new Asset(
            content, type, HexFormat.of().formatHex(hash).substring(0, DIGITS_OF_HASH));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalStateException("every Java has SHA-256", e);
      }
    }

    void answer(Context context) {
      context
          .contentType(type + "; charset=" + StandardCharsets.UTF_8)
          .header("Cache-Control", "public, max-age=31536000, immutable")
          .result(content);
    }
  }

  /** Address of the style sheet. */
  public String styleHref() {
    return "/assets/" + style.hash() + "/gapwise.css";
  }

  /** Address of the style of the sheet, which stands beside that of the pages. */
  public String sheetHref() {
    return "/assets/" + sheet.hash() + "/sheet.css";
  }

  /** The style of the sheet itself, for paper. */
  public String sheetStyle() {
    return new String(sheet.content(), StandardCharsets.UTF_8);
  }

  /** Address of our script. */
  public String scriptHref() {
    return "/assets/" + script.hash() + "/gapwise.js";
  }

  /** Address of the script of the desk. */
  public String deskScriptHref() {
    return "/assets/" + desk.hash() + "/desk.js";
  }

  /** Address of the script that settles pairs by keys. */
  public String pairsScriptHref() {
    return "/assets/" + pairs.hash() + "/pairs.js";
  }

  /** Address of the script that screens by keys. */
  public String screeningScriptHref() {
    return "/assets/" + screening.hash() + "/screening.js";
  }

  /** Address of the style of the desk, which stands beside that of the pages. */
  public String deskStyleHref() {
    return "/assets/" + deskStyle.hash() + "/desk.css";
  }

  /** Address of the script of the page on which figures are read. */
  public String figureScriptHref() {
    return "/assets/" + figure.hash() + "/figure.js";
  }

  /** Address of the style of the page on which figures are read. */
  public String figureStyleHref() {
    return "/assets/" + figureStyle.hash() + "/figure.css";
  }

  /** Address of the library that exchanges parts of a page. */
  public String libraryHref() {
    return "/assets/" + library.hash() + "/htmx.js";
  }

  /** Address of the icon. */
  public String iconHref() {
    return "/assets/" + icon.hash() + "/icon.svg";
  }

  /** Adds their routes. */
  public void addTo(Routes routes) {
    routes.get(styleHref(), Right.OPEN, style::answer);
    routes.get(sheetHref(), Right.OPEN, sheet::answer);
    routes.get(scriptHref(), Right.OPEN, script::answer);
    routes.get(deskScriptHref(), Right.OPEN, desk::answer);
    routes.get(pairsScriptHref(), Right.OPEN, pairs::answer);
    routes.get(screeningScriptHref(), Right.OPEN, screening::answer);
    routes.get(deskStyleHref(), Right.OPEN, deskStyle::answer);
    routes.get(figureScriptHref(), Right.OPEN, figure::answer);
    routes.get(figureStyleHref(), Right.OPEN, figureStyle::answer);
    routes.get(libraryHref(), Right.OPEN, library::answer);
    routes.get(iconHref(), Right.OPEN, icon::answer);
    routes.get("/favicon.ico", Right.OPEN, icon::answer);
  }
}
