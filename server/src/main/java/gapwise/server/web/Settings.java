package gapwise.server.web;

import gapwise.server.admission.Admission;
import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import java.nio.file.Path;

/** What the web server does otherwise than it would by itself. */
final class Settings {
  /** A file of an upload that is larger lies on the disk and not in memory. */
  private static final int LARGEST_PART_IN_MEMORY_KILOBYTES = 16;

  private Settings() {}

  /** Sets them; large parts of forms lie in a folder. */
  static void apply(JavalinConfig config, Path uploads) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.prefer405over404 = true;
    // What is larger never comes here: Admission has refused it.
    config.http.maxRequestSize = Admission.LARGEST_BODY_BYTES;
    config.jetty.multipartConfig.cacheDirectory(uploads.toString());
    config.jetty.multipartConfig.maxFileSize(Admission.LARGEST_UPLOAD_BYTES, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxTotalRequestSize(
        Admission.LARGEST_UPLOAD_BYTES, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxInMemoryFileSize(LARGEST_PART_IN_MEMORY_KILOBYTES, SizeUnit.KB);
  }
}
