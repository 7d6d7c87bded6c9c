package gapwise.evidence;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;

/** For whom a paper reports a number. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "of")
@JsonSubTypes({
  @JsonSubTypes.Type(value = Scope.OneArm.class, name = "arm"),
  @JsonSubTypes.Type(value = Scope.AllArms.class, name = "all-arms"),
  @JsonSubTypes.Type(value = Scope.Comparison.class, name = "comparison")
})
public sealed interface Scope {
  /** The arms named. */
  @JsonIgnore
  List<String> armIds();

  /** One arm. */
  record OneArm(String arm) implements Scope {
    public OneArm {
      Ids.require("arm id", arm);
    }

    @Override
    public List<String> armIds() {
      return List.of(arm);
    }
  }

  /** One value for all arms of the study together. */
  record AllArms() implements Scope {
    @Override
    public List<String> armIds() {
      return List.of();
    }
  }

  /** A comparison of two arms: the first against the second. */
  record Comparison(String arm, String against) implements Scope {
    public Comparison {
      Ids.require("arm id", arm);
      Ids.require("arm id", against);
      if (arm.equals(against)) {
        throw new IllegalArgumentException("an arm cannot be compared with itself: " + arm);
      }
    }

    @Override
    public List<String> armIds() {
      return List.of(arm, against);
    }
  }
}
