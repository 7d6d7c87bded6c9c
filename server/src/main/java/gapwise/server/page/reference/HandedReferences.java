package gapwise.server.page.reference;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.server.job.ImportJobs.Upload;
import gapwise.server.job.PostedForm;
import gapwise.server.job.reference.ReferenceJob;
import gapwise.server.job.reference.ReferenceJobs;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.util.List;

/** Files of references handed in by a form. */
final class HandedReferences {
  /** Letters of a name of a file that are kept; file systems take at most 255. */
  private static final int LONGEST_NAME = 255;

  private HandedReferences() {}

  /**
   * Starts to read the files in a form: {@code files} and, if there is one, {@code log}.
   *
   * @throws WrongInputException when there is no file, or more than one log
   */
  static ReferenceJob start(ReferenceJobs jobs, PostedForm form) throws IOException {
    List<UploadedFile> files = form.chosen("files");
    List<UploadedFile> logs = form.chosen("log");
    if (files.isEmpty()) {
      throw wrong("files", "no-file", say("references.no-file"));
    }
    if (logs.size() > 1) {
      throw wrong("log", "two-logs", say("references.two-logs"));
    }
    return jobs.start(
        files.stream().map(HandedReferences::upload).toList(),
        logs.stream().map(HandedReferences::upload).findFirst());
  }

  private static Upload upload(UploadedFile file) {
    return new Upload(name(file.filename()), file.size(), file.content());
  }

  /** Some browsers send the folder too, which no log of searches names. */
  private static String name(String sent) {
    String last = sent.replaceFirst("(?s)^.*[/\\\\]", "").replaceAll("\\s+", " ").strip();
    String named = last.isEmpty() ? say("references.unnamed") : last;
    return named.length() > LONGEST_NAME
        ? named.substring(0, named.offsetByCodePoints(0, LONGEST_NAME / 2))
        : named;
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }
}
