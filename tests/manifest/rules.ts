/**
 * The rules of an add-in only manifest for Excel with a shared runtime. Orders, lengths and patterns are from
 * Microsoft's schemas (OfficeAppManifestV1_1.xsd, TaskPaneAppVersionOverridesV1_0.xsd, OfficeAppBasicTypesV1_0.xsd);
 * the place of Runtimes and the rules of the shared runtime from its documentation of these elements.
 */

/** The children of an element in the order they must have: `!` must be there, `*` may be there often. */
export const CHILDREN: Readonly<Record<string, string>> = {
  OfficeApp:
    "Id! AlternateId Version! ProviderName! DefaultLocale! DisplayName! Description! IconUrl HighResolutionIconUrl SupportUrl AppDomains Hosts Requirements DefaultSettings! Permissions! Dictionary VersionOverrides",
  "OfficeApp/Hosts": "Host!*",
  Requirements: "Sets Methods",
  Sets: "Set!*",
  DefaultSettings: "SourceLocation!",
  VersionOverrides: "Description Requirements Hosts Resources WebApplicationInfo EquivalentAddins",
  "VersionOverrides/Hosts": "Host!*",
  "Host:Workbook": "Runtimes AllFormFactors DesktopFormFactor",
  Runtimes: "Runtime!",
  AllFormFactors: "ExtensionPoint",
  "ExtensionPoint:CustomFunctions": "Script! Page! Metadata Namespace",
  Script: "SourceLocation!",
  Page: "SourceLocation!",
  Metadata: "SourceLocation!",
  DesktopFormFactor: "GetStarted FunctionFile ExtensionPoint!*",
  GetStarted: "Title! Description! LearnMoreUrl!",
  "ExtensionPoint:PrimaryCommandSurface": "OfficeTab* CustomTab*",
  OfficeTab: "Group!*",
  Group: "Label! Icon! Control!*",
  "Control:Button": "Label! Supertip! Icon! Action!",
  Supertip: "Title! Description!",
  Icon: "Image!*",
  "Action:ShowTaskpane": "TaskpaneId SourceLocation! Title",
  Resources: "Images Urls ShortStrings LongStrings",
  Images: "Image*",
  Urls: "Url*",
  ShortStrings: "String*",
  LongStrings: "String*",
};

const TEXT = /^/;
const SOME_ID = /\S/;

/**
 * The attributes of an element, all of which must be there, unless a `?` ends the name; `type` is that of XML Schema
 * instances.
 */
export const ATTRIBUTES: Readonly<Record<string, Readonly<Record<string, RegExp>>>> = {
  OfficeApp: { type: /^TaskPaneApp$/ },
  "OfficeApp/DisplayName": { DefaultValue: TEXT },
  "OfficeApp/Description": { DefaultValue: TEXT },
  "OfficeApp/IconUrl": { DefaultValue: TEXT },
  "OfficeApp/HighResolutionIconUrl": { DefaultValue: TEXT },
  "OfficeApp/SupportUrl": { DefaultValue: TEXT },
  "OfficeApp/Hosts/Host": { Name: /^Workbook$/ },
  Sets: { "DefaultMinVersion?": /^\d+\.\d+$/ },
  Set: { Name: /^\w+$/, MinVersion: /^\d+\.\d+$/ },
  "DefaultSettings/SourceLocation": { DefaultValue: TEXT },
  VersionOverrides: { type: /^VersionOverridesV1_[01]$/ },
  "VersionOverrides/Hosts/Host": { type: /^Workbook$/ },
  Runtime: { resid: SOME_ID, lifetime: /^(?:short|long)$/ },
  ExtensionPoint: { type: /^(?:CustomFunctions|PrimaryCommandSurface)$/ },
  SourceLocation: { resid: SOME_ID },
  Namespace: { resid: SOME_ID },
  FunctionFile: { resid: SOME_ID },
  Title: { resid: SOME_ID },
  Label: { resid: SOME_ID },
  Description: { resid: SOME_ID },
  LearnMoreUrl: { resid: SOME_ID },
  OfficeTab: { id: SOME_ID },
  Group: { id: SOME_ID },
  Control: { id: SOME_ID, type: /^(?:Button|Menu)$/ },
  Action: { type: /^(?:ShowTaskpane|ExecuteFunction)$/ },
  "Icon/Image": { size: /^(?:16|20|24|32|40|48|64|80)$/, resid: SOME_ID },
  "Images/Image": { id: SOME_ID, DefaultValue: TEXT },
  Url: { id: SOME_ID, DefaultValue: TEXT },
  String: { id: SOME_ID, DefaultValue: TEXT },
};

/** Where an element with a resid finds its resource. */
export const SECTION_OF: Readonly<Record<string, string>> = {
  Title: "ShortStrings",
  Label: "ShortStrings",
  Namespace: "ShortStrings",
  Description: "LongStrings",
  Image: "Images",
  Runtime: "Urls",
  SourceLocation: "Urls",
  FunctionFile: "Urls",
  LearnMoreUrl: "Urls",
};

/** The most characters of a value, by the section or element it stands in. */
export const LONGEST: Readonly<Record<string, number>> = {
  ShortStrings: 125,
  LongStrings: 250,
  Images: 2048,
  Urls: 2048,
  DisplayName: 125,
  ProviderName: 125,
  Description: 250,
  IconUrl: 2048,
  HighResolutionIconUrl: 2048,
  SupportUrl: 2048,
  SourceLocation: 2048,
};

export const LONGEST_ID = 32;

export const NAMESPACES = {
  app: "http://schemas.microsoft.com/office/appforoffice/1.1",
  overrides: "http://schemas.microsoft.com/office/taskpaneappversionoverrides",
  basic: "http://schemas.microsoft.com/office/officeappbasictypes/1.0",
  instance: "http://www.w3.org/2001/XMLSchema-instance",
};

export const GUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;
export const VERSION = /^\d{1,5}(\.\d{1,5}){0,3}$/;

/** Icons: 16, 32 and 80 must be there (ImageResourceReference); the add-in's own are 32 and 64 (IconUrl). */
export const RIBBON_SIZES = [16, 32, 80];
export const ICON_SIZES: Readonly<Record<string, number>> = { IconUrl: 32, HighResolutionIconUrl: 64 };
