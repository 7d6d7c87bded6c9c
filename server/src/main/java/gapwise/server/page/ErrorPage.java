package gapwise.server.page;

import gapwise.problem.Problem;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;

/** What a person sees when a request cannot be answered: what happened, and ways on. */
public final class ErrorPage {
  /** The kind of content. */
  public static final String TYPE = Templates.HTML;

  private final Templates templates;
  private final Sites sites;

  public ErrorPage(Templates templates, Sites sites) {
    this.templates = templates;
    this.sites = sites;
  }

  /**
   * What the template shows.
   *
   * @param site the frame of the page
   * @param heading what happened, in a few words
   * @param detail the same in a sentence
   * @param problems every reason; may be empty
   */
  public record View(Site site, String heading, String detail, List<Problem> problems) {
    public View {
      problems = List.copyOf(problems);
    }
  }

  /** Answers with the page. */
  public void show(Context context, HttpStatus status, String detail, List<Problem> problems) {
    context.status(status).contentType(TYPE).result(bytes(status, detail, problems));
  }

  /** The page itself. */
  public byte[] bytes(HttpStatus status, String detail, List<Problem> problems) {
    String heading = heading(status);
    Site site = sites.of(heading, Place.NONE);
    return templates.bytes("ErrorPage", new View(site, heading, detail, problems));
  }

  private static String heading(HttpStatus status) {
    return switch (status) {
      case NOT_FOUND -> "Not found";
      case METHOD_NOT_ALLOWED -> "Not possible here";
      case CONTENT_TOO_LARGE, URI_TOO_LONG, REQUEST_HEADER_FIELDS_TOO_LARGE -> "Too large";
      case REQUEST_TIMEOUT -> "Too slow";
      case SERVICE_UNAVAILABLE -> "Not just now";
      case FORBIDDEN -> "Refused";
      case UNAUTHORIZED -> "Sign in first";
      case UNPROCESSABLE_CONTENT, BAD_REQUEST, UNSUPPORTED_MEDIA_TYPE, EXPECTATION_FAILED ->
          "This cannot be answered as it stands";
      default -> "Something went wrong";
    };
  }
}
