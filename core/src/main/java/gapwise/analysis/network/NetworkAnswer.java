package gapwise.analysis.network;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import gapwise.analysis.result.TaskResult;
import java.util.List;
import java.util.Optional;

/**
 * What the model {@code network} makes.
 *
 * @param studies one entry a data row
 * @param fit the top of the likelihood, where there is one
 * @param network empty where nothing can be compared
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record NetworkAnswer(
    List<Result.Study> studies, Optional<Result.Fit> fit, Optional<NetworkResult> network)
    implements TaskResult {
  public NetworkAnswer {
    studies = List.copyOf(studies);
  }
}
