/** How to bring the add-in into Excel by hand: the steps that npm run excel prints. */
export function sideloading(manifest: string, id: string): string {
  return `Excel on the web
  1. Open a workbook, then Home, Add-ins, More Add-ins, My Add-ins, Upload My Add-in.
  2. Choose ${manifest}

Excel on Windows
  1. In PowerShell or the command prompt:
     reg add HKCU\\SOFTWARE\\Microsoft\\Office\\16.0\\Wef\\Developer /v ${id} /t REG_SZ /d "${manifest}" /f
  2. Start Excel again, then Home, Add-ins, and choose Pourwright under Developer Add-ins.

Excel on a Mac
  1. In Terminal:
     mkdir -p ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef
     cp "${manifest}" ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef/pourwright.xml
  2. Start Excel again, then Home, Add-ins, and choose Pourwright.

The button Pour sheet then stands on the Home tab, and =POUR. in a cell lists the functions.`;
}
