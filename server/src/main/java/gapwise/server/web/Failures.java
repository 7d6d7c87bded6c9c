package gapwise.server.web;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.server.api.ProblemDetails;
import gapwise.server.page.ErrorPage;
import gapwise.store.RecordDamagedException;
import gapwise.store.StoreUnusableException;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import java.util.List;
import org.eclipse.jetty.http.HttpException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Turns whatever goes wrong into an answer: a calm page for people, problem details for programs.
 * What is our own fault is written to the log and never shown.
 */
final class Failures {
  private static final Logger LOG = LoggerFactory.getLogger(Failures.class);
  private static final String OUR_FAULT =
      "Something went wrong on our side. Nothing was changed by this request."
          + " Please try again; if it stays, the log of the server says more.";

  private final ErrorPage page;

  Failures(ErrorPage page) {
    this.page = page;
  }

  void addTo(RoutesConfig routes) {
    routes.exception(WrongInputException.class, this::wrongInput);
    routes.exception(StoreUnusableException.class, this::unusable);
    routes.exception(HttpResponseException.class, this::refused);
    routes.exception(Exception.class, this::unexpected);
  }

  private void wrongInput(WrongInputException wrong, Context context) {
    answer(
        context,
        HttpStatus.UNPROCESSABLE_CONTENT,
        "What was asked cannot be done as it stands.",
        wrong.problems());
  }

  /** Where the home lies is nobody's business but the log's; which record is damaged is. */
  private void unusable(StoreUnusableException failure, Context context) {
    LOG.error("{} {}: {}", context.method(), context.path(), failure.getMessage());
    answer(
        context,
        HttpStatus.SERVICE_UNAVAILABLE,
        failure.problem().message(),
        failure instanceof RecordDamagedException ? List.of(failure.problem()) : List.of());
  }

  private void refused(HttpResponseException refusal, Context context) {
    HttpStatus status = HttpStatus.forStatus(refusal.getStatus());
    answer(context, status, sentence(status, refusal.getMessage()), List.of());
  }

  private static String sentence(HttpStatus status, String message) {
    return switch (status) {
      case NOT_FOUND ->
          message.contains(" ") && !message.startsWith("Endpoint")
              ? message
              : "There is nothing at this address.";
      case METHOD_NOT_ALLOWED -> "This address does not take this kind of request.";
      case CONTENT_TOO_LARGE -> "What was sent is larger than this server takes.";
      default -> message;
    };
  }

  private void unexpected(Exception failure, Context context) {
    if (tooLarge(failure)) {
      answer(
          context,
          HttpStatus.CONTENT_TOO_LARGE,
          sentence(HttpStatus.CONTENT_TOO_LARGE, ""),
          List.of());
      return;
    }
    LOG.error("{} {} failed", context.method(), context.path(), failure);
    answer(context, HttpStatus.INTERNAL_SERVER_ERROR, OUR_FAULT, List.of());
  }

  /** The web server says in several ways that an upload passes its limits. */
  private static boolean tooLarge(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      boolean status = cause instanceof HttpException http && http.getCode() == 413;
      String message = String.valueOf(cause.getMessage());
      if (status || message.contains("max length exceeded") || message.contains("max file size")) {
        return true;
      }
    }
    return false;
  }

  private void answer(Context context, HttpStatus status, String detail, List<Problem> problems) {
    if (context.path().startsWith("/api/")) {
      ProblemDetails.answer(context, status, detail, problems);
    } else {
      page.show(context, status, detail, problems);
    }
  }
}
