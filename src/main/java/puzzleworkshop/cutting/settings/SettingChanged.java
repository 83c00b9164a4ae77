package puzzleworkshop.cutting.settings;

/** Published within the transaction that records a trial of a setting or dials something else in for it. */
public record SettingChanged(long settingId) {}
