package gapwise.server.api;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.result.Origin;
import gapwise.answer.QuestionWords;
import gapwise.course.CourseAnswer;
import gapwise.course.CourseTold;
import gapwise.course.CurveTaken;
import gapwise.course.MethodCourse;
import gapwise.figure.value.Limits;
import gapwise.selection.LeftOut;
import java.util.Optional;

/** An event over time as JSON: shares by month and what they come from, method by method. */
final class CourseJson {
  private CourseJson() {}

  static ObjectNode of(CourseAnswer answer, Origin origin) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("question", QuestionWords.of(answer.question()));
    json.put("outcome", answer.question().outcome().code());
    answer.selection().clock().ifPresent(clock -> json.put("clock", clock.code()));
    json.put("horizonMonths", answer.horizon());
    json.putArray("methods")
        .addAll(answer.methods().stream().map(one -> method(one, origin)).toList());
    json.putArray("leftOut").addAll(answer.leftOut().stream().map(CourseJson::leftOut).toList());
    CourseTold.cautions(answer).forEach(json.withArray("cautions")::add);
    return json;
  }

  private static ObjectNode method(MethodCourse course, Origin origin) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("method", course.method().code());
    json.put("studies", course.studies());
    json.put("patients", course.patients());
    json.put("pooled", course.pooled().isPresent());
    json.putArray("curves").addAll(course.curves().stream().map(CourseJson::curve).toList());
    for (int month : CourseTold.MONTHS) {
      course
          .by(month)
          .ifPresent(
              by -> {
                ObjectNode share = json.withArray("shares").addObject();
                share.put("month", month).put("share", by.share());
                limits(share, by.limits());
                share.put("curves", by.curves()).put("atRisk", by.atRisk());
              });
    }
    course
        .restrictedMean()
        .ifPresent(
            mean -> {
              ObjectNode within = json.putObject("restrictedMean").put("months", mean.months());
              limits(within, mean.limits());
              within.put("curves", mean.curves());
            });
    json.set("outcome", course.outcome().json(origin));
    return json;
  }

  private static void limits(ObjectNode json, Optional<Limits> limits) {
    limits.ifPresent(range -> json.put("lower", range.lower()).put("upper", range.upper()));
  }

  private static ObjectNode curve(CurveTaken taken) {
    return JsonNodeFactory.instance
        .objectNode()
        .put("studyId", taken.row().study().id())
        .put("armId", taken.row().arm().id())
        .put("label", taken.label())
        .put("patients", taken.patients());
  }

  private static ObjectNode leftOut(LeftOut one) {
    return JsonNodeFactory.instance
        .objectNode()
        .put("studyId", one.studyId())
        .put("armId", one.armId())
        .put("label", one.label())
        .put("code", one.code())
        .put("message", one.message());
  }
}
