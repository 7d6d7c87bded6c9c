package gapwise.analysis.patients;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import gapwise.analysis.result.TaskResult;
import java.util.Optional;

/**
 * What the task {@code patients-with-summaries} makes.
 *
 * @param fit the top of the likelihood, where there is one
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record PatientsAnswer(Optional<Result.Fit> fit, PatientsResult patients)
    implements TaskResult {}
