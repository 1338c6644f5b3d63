import { CommandType, type IMutation, IUniverInstanceService, type Workbook } from "@univerjs/core";

interface Settings {
  readonly unitId: string;
  /** All that the workbook holds beside its sheets, by key. */
  readonly custom: Readonly<Record<string, string>>;
}

/** Puts the pane's settings into the workbook as all other changes are made, so that whoever listens hears of it. */
export const SetSettingsMutation: IMutation<Settings> = {
  id: "pourwright.mutation.set-settings",
  type: CommandType.MUTATION,
  handler: (accessor, { unitId, custom }) => {
    const workbook = accessor.get(IUniverInstanceService).getUnit<Workbook>(unitId);
    workbook?.setCustomMetadata({ ...custom });
    return workbook !== null;
  },
};
