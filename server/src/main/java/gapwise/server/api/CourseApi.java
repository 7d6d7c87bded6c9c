package gapwise.server.api;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.answer.Edition;
import gapwise.course.CourseAnswer;
import gapwise.course.CourseFigure;
import gapwise.course.Courses;
import gapwise.figure.Figure;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.selection.Question;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.CourseAddress;
import gapwise.server.download.Attachment;
import gapwise.server.download.FigureDownloads;
import gapwise.server.home.Origins;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.List;
import java.util.stream.Collectors;

/** An event over time after each method, under the parameters of its page. */
final class CourseApi {
  private static final String JSON = "application/json";

  private final Courses courses;
  private final Edition edition;

  CourseApi(Courses courses, Edition edition) {
    this.courses = courses;
    this.edition = edition;
  }

  void addTo(Routes routes) {
    FigureDownloads.add(routes, Api.ROOT + "/over-time", this::figure);
    routes.get(
        Api.ROOT + "/over-time", Right.SEE, context -> Json.answer(context, json(answer(context))));
    routes.get(Api.ROOT + "/over-time-plan.json", Right.SEE, this::plan);
    routes.get(Api.ROOT + "/over-time-result.json", Right.SEE, this::result);
    routes.get(Api.ROOT + "/over-time-methods.txt", Right.SEE, this::methods);
  }

  private CourseAnswer answer(Context context) {
    Address address = new Address(context.queryParamMap());
    Question question = FigureApi.question(address);
    if (!Courses.isTime(question.outcome())) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  "outcome",
                  "no-time",
                  "'"
                      + question.outcome().code()
                      + "' is no time to an event; name one, such as outcome=time-to-union.")));
    }
    return courses.ask(question, CourseAddress.horizon(address));
  }

  private Figure figure(Context context) {
    return CourseFigure.of(answer(context), edition).orElseThrow(FigureApi::nothing);
  }

  private ObjectNode json(CourseAnswer answer) {
    return CourseJson.of(answer, Origins.of(edition));
  }

  private void plan(Context context) {
    ObjectNode plans = JsonNodeFactory.instance.objectNode();
    some(answer(context)).methods().forEach(one -> plans.set(one.method().code(), one.plan()));
    Attachment.send(context, JSON, "over-time-plan.json", plans.toPrettyString());
  }

  private void result(Context context) {
    ObjectNode results = json(some(answer(context)));
    Attachment.send(context, JSON, "over-time-result.json", results.toPrettyString());
  }

  private void methods(Context context) {
    String text =
        some(answer(context)).methods().stream()
            .filter(one -> one.outcome() instanceof PlanOutcome.Done)
            .map(
                one ->
                    one.method().label()
                        + "\n\n"
                        + AnswerFiles.methods((PlanOutcome.Done) one.outcome(), edition))
            .collect(Collectors.joining("\n\n"));
    Attachment.send(context, AnswerFiles.TEXT, "over-time-methods.txt", text);
  }

  private static CourseAnswer some(CourseAnswer answer) {
    if (answer.methods().isEmpty()) {
      throw FigureApi.nothing();
    }
    return answer;
  }
}
