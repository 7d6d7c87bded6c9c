package gapwise.analysis;

/** Whether small studies tell another story than large ones. Part of a {@link Result}. */
public record SmallStudyEffectsResult() {}
