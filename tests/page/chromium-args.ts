/**
 * How the tests start Chromium. The last list replaces the driver's own, so it repeats it; what is added is the
 * browser's address bar, which loads two pages of its own into every window, as heavy as ours and never seen here.
 */
export const chromiumArgs: readonly string[] = [
  '--no-sandbox',
  '--disable-gpu',
  '--enable-unsafe-swiftshader',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  `--disable-features=${[
    'AvoidUnnecessaryBeforeUnloadCheckSync',
    'DestroyProfileOnBrowserClose',
    'HttpsUpgrades',
    'HttpsFirstBalancedModeAutoEnable',
    'LensOverlay',
    'MediaRouter',
    'PaintHolding',
    'ThirdPartyStoragePartitioning',
    'AvoidCorsURLLoaderRestartOnRedirect',
    'OptimizationHints',
    'NetworkTimeServiceQuerying',
    'PreconnectToSearch',
    'WebUIOmniboxPopup',
    'WebUIOmniboxAimPopup',
    'WebUIOmniboxFullPopup',
    'AiModeOmniboxEntryPoint',
  ].join(',')}`,
];
