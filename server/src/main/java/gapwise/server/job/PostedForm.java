package gapwise.server.job;

import gapwise.server.account.Actor;
import gapwise.server.admission.BusyException;
import gapwise.server.admission.FullDisk;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import org.eclipse.jetty.http.MultiPartFormData;

/**
 * A form as it was sent, files among it. It was read whole before, so that whatever fails here is
 * how the form is written, which is told in words.
 */
public final class PostedForm {
  private static final String TOO_MUCH =
      "This form has more parts, or longer texts, than this server takes: at most 1,000 files and"
          + " fields together, 200,000 letters in all fields. Nothing was taken in.";
  private static final String UNREADABLE =
      "The form that was sent cannot be read: it is cut off, or not written as its header"
          + " Content-Type says (multipart/form-data with its boundary). Nothing was taken in; send"
          + " it again.";

  /** The field for the name or initials of who does it. */
  private static final String WHO = "who";

  /** Where the web server keeps what became of reading the parts. */
  private static final String PARTS = MultiPartFormData.class.getName();

  private final Context context;

  public PostedForm(Context context) {
    this.context = context;
  }

  /** The files of one field that are not empty. */
  public List<UploadedFile> files(String name) {
    return read(() -> context.uploadedFiles(name)).stream()
        .filter(file -> file.size() > 0)
        .toList();
  }

  /** The files of one field that were chosen, empty ones among them. */
  public List<UploadedFile> chosen(String name) {
    return read(() -> context.uploadedFiles(name)).stream()
        .filter(file -> file.size() > 0 || !file.filename().isBlank())
        .toList();
  }

  /**
   * Every value of one field. Who does it is the one who has signed in, whatever was sent; only
   * where there are no accounts it is what was typed.
   */
  public List<String> values(String name) {
    return name.equals(WHO) && Actor.now().name().isPresent()
        ? Actor.now().name().stream().toList()
        : read(() -> context.formParams(name));
  }

  /** The first value of one field without blanks around it; empty where there is none. */
  public String first(String name) {
    return values(name).stream().findFirst().map(String::strip).orElse("");
  }

  private <T> T read(Supplier<T> part) {
    try {
      return part.get();
    } catch (HttpResponseException worded) {
      throw worded;
    } catch (Exception failure) { // Kotlin throws checked exceptions without a word
      forgetFailure();
      if (FullDisk.causes(failure)) {
        throw new BusyException(FullDisk.SECONDS, FullDisk.WORDS);
      }
      refuseOurFault(failure);
      throw tooMuch(failure)
          ? new HttpResponseException(HttpStatus.CONTENT_TOO_LARGE.getCode(), TOO_MUCH)
          : new HttpResponseException(HttpStatus.BAD_REQUEST.getCode(), UNREADABLE);
    }
  }

  /**
   * The web server asks for the parts again when the request is over, to delete them; it would
   * stumble over a failure, into the next request of the connection.
   */
  private void forgetFailure() {
    if (context.req().getAttribute(PARTS) instanceof CompletableFuture<?> parts
        && parts.isCompletedExceptionally()) {
      context.req().removeAttribute(PARTS);
    }
  }

  /** A file that cannot be written here is not how the form is written. */
  private static void refuseOurFault(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof FileSystemException unwritten) {
        throw new UncheckedIOException("parts of a form could not be kept", unwritten);
      }
    }
  }

  /** The web server says in several ways that a form passes its limits. */
  private static boolean tooMuch(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      String said = String.valueOf(cause.getMessage()).toLowerCase(Locale.ROOT);
      if (said.contains("exceeded") || said.contains("too many") || said.contains("larger than")) {
        return true;
      }
    }
    return false;
  }
}
