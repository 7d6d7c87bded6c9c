package gapwise.server.job;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.util.List;

/** Files handed in with the name of who imports them, by the page or the API. */
public final class HandedIn {
  private static final int LONGEST_NAME = 80;

  private HandedIn() {}

  /**
   * Starts an import of the files in a form: {@code files} and {@code who}.
   *
   * @param agreed what is agreed to beforehand
   * @throws WrongInputException when there is no file or no name
   */
  public static ImportJob start(ImportJobs jobs, PostedForm form, ImportJob.Agreed agreed)
      throws IOException {
    List<UploadedFile> files = form.files("files");
    String who = form.first("who");
    if (files.isEmpty()) {
      throw wrong(
          "files", "no-file", "No file was chosen. Choose a filled workbook, or CSV files.");
    }
    if (who.isEmpty() || who.length() > LONGEST_NAME) {
      throw wrong(
          "who",
          "no-name",
          "Say who imports, in at most " + LONGEST_NAME + " letters; the history keeps it.");
    }
    return jobs.start(
        files.stream()
            .map(file -> new ImportJobs.Upload(file.filename(), file.size(), file.content()))
            .toList(),
        who,
        agreed);
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }
}
