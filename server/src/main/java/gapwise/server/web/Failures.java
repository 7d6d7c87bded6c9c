package gapwise.server.web;

import static gapwise.sentence.Sentences.say;

import gapwise.budget.WorkStoppedException;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.server.account.NoAccountsException;
import gapwise.server.account.Passwords;
import gapwise.server.account.SignInNeededException;
import gapwise.server.admission.BusyException;
import gapwise.server.admission.FullDisk;
import gapwise.server.api.ProblemDetails;
import gapwise.server.page.ErrorPage;
import gapwise.server.page.people.SignInPage;
import gapwise.store.RecordDamagedException;
import gapwise.store.StoreUnusableException;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Turns whatever goes wrong into an answer: a calm page for people, problem details for programs.
 * What is our own fault is written to the log and never shown.
 */
final class Failures {
  private static final Logger LOG = LoggerFactory.getLogger(Failures.class);
  static final String OUR_FAULT =
      "Something went wrong on our side. Nothing was changed by this request."
          + " Please try again; if it stays, the log of the server says more.";

  private static final int CROWDED_SECONDS = 5;

  private final ErrorPage page;
  private final SignInPage signIn;

  /**
   * @param signIn what people see where it must be known who asks
   */
  Failures(ErrorPage page, SignInPage signIn) {
    this.page = page;
    this.signIn = signIn;
  }

  void addTo(RoutesConfig routes) {
    routes.exception(WrongInputException.class, this::wrongInput);
    routes.exception(StoreUnusableException.class, this::unusable);
    routes.exception(HttpResponseException.class, this::refused);
    routes.exception(WorkStoppedException.class, this::stopped);
    routes.exception(BusyException.class, this::busy);
    routes.exception(SignInNeededException.class, this::unknown);
    routes.exception(NoAccountsException.class, this::unguarded);
    routes.exception(Passwords.BusyException.class, this::crowded);
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
    answer(
        context,
        status,
        sentence(status, Objects.requireNonNullElse(refusal.getMessage(), status.getMessage())),
        List.of());
  }

  private static String sentence(HttpStatus status, String message) {
    return switch (status) {
      case NOT_FOUND ->
          message.contains(" ") && !message.startsWith("Endpoint")
              ? message
              : "There is nothing at this address.";
      case METHOD_NOT_ALLOWED -> "This address does not take this kind of request.";
      case CONTENT_TOO_LARGE ->
          message.contains(" ") ? message : "What was sent is larger than this server takes.";
      default -> message;
    };
  }

  private void stopped(WorkStoppedException stopped, Context context) {
    if (stopped.isAbandoned()) {
      context.status(HttpStatus.CLIENT_CLOSED_REQUEST);
      return;
    }
    answer(
        context,
        HttpStatus.UNPROCESSABLE_CONTENT,
        "What was asked takes longer than one request may compute.",
        List.of(stopped.problem()));
  }

  private void busy(BusyException busy, Context context) {
    context.header("Retry-After", Integer.toString(busy.seconds()));
    answer(context, HttpStatus.SERVICE_UNAVAILABLE, busy.words(), List.of());
  }

  private void unknown(SignInNeededException needed, Context context) {
    if (isProgram(context)) {
      answer(context, HttpStatus.UNAUTHORIZED, needed.words(), List.of());
    } else {
      signIn.instead(context, needed.words());
    }
  }

  private void unguarded(NoAccountsException none, Context context) {
    answer(context, HttpStatus.SERVICE_UNAVAILABLE, String.valueOf(none.getMessage()), List.of());
  }

  private void crowded(Passwords.BusyException many, Context context) {
    busy(new BusyException(CROWDED_SECONDS, say("people.busy")), context);
  }

  private void unexpected(Exception failure, Context context) {
    Optional<WorkStoppedException> stopped = WorkStoppedException.causing(failure);
    if (stopped.isPresent()) {
      stopped(stopped.get(), context);
    } else if (FullDisk.causes(failure)) {
      busy(new BusyException(FullDisk.SECONDS, FullDisk.WORDS), context);
    } else {
      LOG.error("{} {} failed", context.method(), context.path(), failure);
      answer(context, HttpStatus.INTERNAL_SERVER_ERROR, OUR_FAULT, List.of());
    }
  }

  private static boolean isProgram(Context context) {
    return context.path().startsWith("/api/");
  }

  private void answer(Context context, HttpStatus status, String detail, List<Problem> problems) {
    if (isProgram(context)) {
      ProblemDetails.answer(context, status, detail, problems);
    } else {
      page.show(context, status, detail, problems);
    }
  }
}
