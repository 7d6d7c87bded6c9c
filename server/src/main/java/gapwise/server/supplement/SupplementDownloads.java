package gapwise.server.supplement;

import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.download.Attachment;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Map;

/** The supplement of what a page tells as one archive, under the parameters of the page. */
public final class SupplementDownloads {
  /** Where that of a table of methods side by side is. */
  public static final String COMPARE = "/api/v1/compare-supplement.zip";

  private static final Map<String, String> PAGES =
      Map.of(
          "/api/v1/supplement.zip",
          PagePaths.POOLED,
          "/api/v1/by-size-supplement.zip",
          PagePaths.BY_SIZE,
          "/api/v1/funnel-supplement.zip",
          PagePaths.FUNNEL,
          COMPARE,
          PagePaths.COMPARE);

  private static final String TYPE = "application/zip";

  private final Supplements supplements;

  public SupplementDownloads(Supplements supplements) {
    this.supplements = supplements;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    PAGES.forEach((path, page) -> routes.get(path, Right.SEE, context -> send(context, page)));
  }

  /** Written whole before the first byte is sent, so that a refusal is no half archive. */
  private void send(Context context, String page) throws IOException {
    Path folder = Files.createTempDirectory("gapwise-download");
    Path file = folder.resolve("supplement.zip");
    try {
      supplements.write(file, supplements.of(page, new Address(context.queryParamMap())));
      InputStream bytes =
          new TemporaryFolderInput(
              Files.newInputStream(file, StandardOpenOption.DELETE_ON_CLOSE), folder);
      Attachment.announce(context, TYPE, "supplement" + page.replace('/', '-') + ".zip");
      context.result(bytes);
    } catch (IOException | RuntimeException failure) {
      Files.deleteIfExists(file);
      Files.deleteIfExists(folder);
      throw failure;
    }
  }
}
